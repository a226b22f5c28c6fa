import type { Layout } from '../model/layout.ts';
import { cylinderPlaces } from './cylinder-places.ts';
import { thrustSide } from './thrust-side.ts';

const bankWords = { L: 'left bank', R: 'right bank', A: 'bank A', B: 'bank B' } as const;

function speakList(layout: Layout): string {
  if ((layout.numbering.list ?? []).length === 0)
    return "Cylinders carry the maker's own numbers; the list is not filled in yet.";
  const places = cylinderPlaces(layout);
  const banks = [...new Set(places.map((place) => place.bank))];
  const rows = banks.map((bank) => {
    const numbers = places
      .filter((place) => place.bank === bank)
      .sort((a, b) => a.fromFreeEnd - b.fromFreeEnd)
      .map((place) => place.number)
      .join(', ');
    return bank === null ? numbers : `${bankWords[bank]} ${numbers}`;
  });
  return `Cylinders carry the maker's own numbers, from the fan end to the flywheel: ${rows.join('; ')}.`;
}

function speakOrder(layout: Layout): string {
  if (layout.numbering.scheme === 'list') return speakList(layout);
  if (layout.engine.cylinders === 1) return 'The engine has one cylinder.';
  return layout.numbering.scheme === 'free-first'
    ? 'Cylinders are counted from the fan end: number 1 is the one nearest the fan.'
    : 'Cylinders are counted from the flywheel end: number 1 is the one nearest the flywheel.';
}

/**
 * The convention that every report prints: how cylinders are numbered and which way left and right are meant.
 */
export function speakNumbering(layout: Layout): string {
  const engine = `On the engine, left and right are as seen from the flywheel looking towards the fan; it turns ${
    layout.engine.rotation === 'CW' ? 'clockwise' : 'counter-clockwise'
  } seen from the fan end, so the thrust side is the ${thrustSide(layout.engine.rotation)}.`;
  const machine = layout.stationary
    ? ''
    : ' On the machine, left and right are as seen from the seat facing the direction of travel.';
  return `${speakOrder(layout)} ${engine}${machine}`;
}
