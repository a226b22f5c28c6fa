import { defectOf } from '../../shared-lib/defects/index.ts';
import type { MarkSize } from '../../shared-lib/measuring/mark-size.ts';
import type { Finding } from '../../shared-lib/model/finding.ts';
import type { Mark } from '../../shared-lib/model/mark.ts';
import { quantityKind } from '../../shared-lib/quantities/dictionary.ts';

export type Measure = 'size' | 'width' | 'angle';

/** A number that a mark offers to its finding. */
export interface SizeOffer {
  readonly measure: Measure;
  readonly quantity: string;
  readonly measurement: MarkSize['size'];
}

const kindOf: Readonly<Record<MarkSize['size']['what'], { unit: string; liked: readonly string[] }>> = {
  length: { unit: 'mm', liked: ['length', 'width', 'depth', 'height'] },
  area: { unit: 'mm²', liked: ['area'] },
  angle: { unit: '°', liked: ['angle'] },
};

/** The quantity of a finding's kind that a measure answers: the kind's own first, else the plain one. */
function quantityFor(what: MarkSize['size']['what'], measure: Measure, mark: Mark, finding: Finding): string {
  const { unit, liked } = kindOf[what];
  const own: readonly string[] = (defectOf(finding.defect)?.quantities ?? []).filter(
    (id) => quantityKind(id)?.unit === unit,
  );
  if (measure === 'width') return own.find((id) => id === 'opening' || id === 'width') ?? 'width';
  const wanted = mark.shape === 'span' && own.includes('width') ? ['width'] : liked;
  return wanted.find((id) => own.includes(id)) ?? own[0] ?? liked[0] ?? 'length';
}

/** What the mark measures, each with the quantity that it answers. Pixels answer none. */
export function sizeOffers(size: MarkSize, mark: Mark, finding: Finding): SizeOffer[] {
  return (['size', 'width', 'angle'] as const).flatMap((measure) => {
    const measurement = size[measure];
    if (measurement === null || measurement.expanded === null) return [];
    return { measure, measurement, quantity: quantityFor(measurement.what, measure, mark, finding) };
  });
}
