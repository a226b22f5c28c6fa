import { type ComputedLine, sheet } from '../sheet-kind.ts';
import { oilExpansionPerKelvin } from './limits.ts';
import { cylinderDriftSheet } from './sheet.ts';

const circleMm2 = (diameterMm: number): number => (Math.PI * diameterMm ** 2) / 4;

export const cylinderDrift = sheet(
  cylinderDriftSheet,
  (given) => {
    const [drift, minutes, bore, rod] = [
      given.number('drift'),
      given.number('time'),
      given.number('bore'),
      given.number('rod'),
    ];
    const load = given.word('load');
    const inwards = load === 'pushes rod in';
    const lines: ComputedLine<keyof typeof cylinderDriftSheet.results>[] = [];
    const says: string[] = [];
    if (drift !== null) lines.push({ of: 'drift', value: drift });
    if (drift !== null && minutes !== null)
      lines.push({
        of: 'drift in 10 min',
        value: (drift / minutes) * 10,
        uncertainty: { value: 10 / minutes, from: '1 mm over the test; common practice, no source' },
      });
    const areaMm2 =
      bore === null || load === null
        ? null
        : inwards
          ? circleMm2(bore)
          : rod === null
            ? null
            : circleMm2(bore) - circleMm2(rod);
    if (areaMm2 !== null) {
      lines.push({ of: 'area', value: areaMm2 / 100 });
      if (drift !== null) {
        const volumeMl = (areaMm2 * drift) / 1000;
        lines.push({ of: 'volume', value: volumeMl });
        if (minutes !== null) {
          lines.push({ of: 'flow', value: volumeMl / minutes });
          const cylinders = given.number('cylinders');
          if (cylinders !== null) lines.push({ of: 'flow, all', value: (volumeMl / minutes) * cylinders });
        }
      }
    }
    if (inwards && rod !== null && drift !== null) {
      lines.push({ of: 'gland alone would need', value: (circleMm2(rod) * drift) / 1000 });
    }
    const [oilLitres, cooling] = [given.number('oilVolume'), given.number('cooling')];
    if (oilLitres !== null && cooling !== null) {
      lines.push({ of: 'cooling alone', value: oilLitres * 1000 * oilExpansionPerKelvin * cooling });
    }
    const pressure = given.number('pressure');
    if (pressure !== null && bore !== null) {
      const push = pressure * circleMm2(bore);
      lines.push({ of: 'pushing force', value: push / 1000 });
      if (rod !== null) {
        const ring = circleMm2(bore) - circleMm2(rod);
        lines.push(
          { of: 'pulling force', value: (pressure * ring) / 1000 },
          { of: 'rod side if blocked', value: push / ring },
        );
      }
    }
    if (drift !== null && drift > 0) {
      says.push(
        inwards
          ? 'With both ports shut tight a leaking piston seal alone cannot let the rod in: the rod’s own volume has nowhere to go. Oil leaves by a valve, lock valve, hose or the gland.'
          : load === null
            ? 'Which way the load pushes is not said. A leaking piston seal alone can let a pulled rod out, never a pushed one in; valves, lines and the gland can do both.'
            : 'A leaking piston seal can let a pulled rod out, and so can valves and lines.',
        'Split the test: block the load, cap the lines at the cylinder, unblock under watch and repeat. Drift that goes on is the cylinder; drift that stops is valve or lines.',
        'Compare left with right and with earlier visits; no figure holds for all machines.',
      );
    }
    const reason =
      given.word('engine') === 'running'
        ? 'the engine ran'
        : given.word('control') === 'not neutral'
          ? 'the control was not in neutral'
          : null;
    return { lines, says, ...(reason === null ? {} : { void: reason }) };
  },
  (given) => {
    const [bore, rod] = [given.number('bore'), given.number('rod')];
    return bore !== null && rod !== null && rod >= bore
      ? [{ input: 'rod', weight: 'impossible', what: `A rod of ${rod} mm does not go into a bore of ${bore} mm.` }]
      : [];
  },
);
