import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { sizeWords } from '../../shared-lib/measuring/words.ts';
import type { Mark } from '../../shared-lib/model/mark.ts';
import type { UnitSystem } from '../../shared-lib/quantities/units.ts';
import type { StageLabel } from '../stage/stage-scene.ts';

/** The size of the mark in hand, beside its end. */
export function sizeLabels(record: VisitRecord, picked: string | null, units: UnitSystem): StageLabel[] {
  const mark = record.marks.find(({ id }) => id === picked);
  const size = record.sizes.find(({ markId }) => markId === picked);
  if (!mark || !size) return [];
  const at = lowest(mark);
  return at ? [{ id: `size ${mark.id}`, at, text: sizeWords(size.size, units) }] : [];
}

/** Below the mark its words cover the least of it. */
function lowest({ points }: Mark): Mark['points'][number] | undefined {
  return points.reduce((best, point) => (best === undefined || point.y > best.y ? point : best), points[0]);
}

/** What a set point of a scale is called, for those who cannot see it. */
export function referenceName({ id, shape, points }: Mark): string {
  if (shape === 'span') return 'Known length';
  if (shape === 'area') return points.length === 4 ? 'Calibration card' : 'Circle through the points';
  return `Point ${Number(id.replace('reference ', '')) + 1} of the scale`;
}
