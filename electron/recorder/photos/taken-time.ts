import type { Tables } from '../database/tables.ts';

type TimeColumns = Pick<Tables['shot'], 'taken_at_ms' | 'taken_zone_min' | 'taken_source'>;

const unknown: TimeColumns = { taken_at_ms: null, taken_zone_min: null, taken_source: null };

const instant = (takenLocal: string, zoneMin: number): number => Date.parse(`${takenLocal}Z`) - zoneMin * 60_000;

/** As the camera says it: an instant where it names its zone, else only its wall clock's text. */
export const takenByCamera = (takenLocal: string | null, zoneMin: number | null): TimeColumns =>
  takenLocal === null || zoneMin === null
    ? unknown
    : { taken_at_ms: instant(takenLocal, zoneMin), taken_zone_min: zoneMin, taken_source: 'camera' };

/**
 * As the camera says it, put right by its clock's offset. Where the camera names no zone its wall clock is read in the
 * shop's. Always reckoned from the camera's own text, so that setting a clock twice does not shift twice.
 *
 * @param offsetMs  added to what the camera said
 */
export const takenCorrected = (
  takenLocal: string | null,
  zoneMin: number | null,
  shopZoneMin: number,
  offsetMs: number,
): TimeColumns => {
  if (takenLocal === null) return unknown;
  const zone = zoneMin ?? shopZoneMin;
  return { taken_at_ms: instant(takenLocal, zone) + offsetMs, taken_zone_min: zone, taken_source: 'camera-corrected' };
};
