import { defectOf } from '../defects/index.ts';
import type { MethodCode } from '../model/finding.ts';
import { parseLocation } from '../parts/parse-location.ts';
import { type Detector, detectionTable, type Power } from './detection-power.ts';
import { methodOf } from './index.ts';

/**
 * What it is worth that a detector did not show a defect.
 *
 * @param place  where it was looked for; null where nobody has said
 * @returns  where the published table has no row for the defect: partial for the methods that can confirm it, else cannot;
 *           never better than partial, because nobody has said so
 */
export function detectionPower(defect: string, detector: Detector, place: string | null): Power {
  const codes = place === null ? [] : parseLocation(place).path.map(({ code }) => code);
  const row = detectionTable.find(
    ({ defects, parts }) =>
      defects.includes(defect) && (parts === undefined || parts.some((part) => codes.includes(part))),
  );
  if (row !== undefined) return row.cells[detector]?.power ?? 'cannot';
  return defectOf(defect)?.confirmedBy.some((method) => method === detector) ? 'partial' : 'cannot';
}

/** `Not found by penetrant`, and for a method that can miss it: `Not found by eye, which can miss it`. Never 'good', never 'no problem'. */
export function notFoundSentence(defect: string, methods: readonly MethodCode[], place: string | null): string {
  const said = methods.map((code) => {
    const misses = detectionPower(defect, code, place) === 'good' ? '' : ', which can miss it';
    return `${methodOf(code).by}${misses}`;
  });
  return said.length === 0 ? 'Not found; no method is named' : `Not found ${said.join('; nor ')}`;
}
