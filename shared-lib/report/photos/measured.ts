import type { CalibratedPlane } from '../../measuring/calibrated-plane.ts';
import { referenceWords, sizeWarnings, sizeWords } from '../../measuring/words.ts';
import type { Mark } from '../../model/mark.ts';
import { listed } from '../../wording/listed.ts';
import { reportWords } from '../../wording/report.ts';
import type { ReportContext } from '../context.ts';
import { asSentence } from '../sentence.ts';

export interface MeasuredMark {
  readonly mark: Mark;
  readonly plane: CalibratedPlane;
  /** `15.2 ± 0.9 mm`, as the window says it. */
  readonly words: string;
  readonly warnings: readonly string[];
}

/** A number is not parted from its uncertainty or its unit at a line's end. */
const unbroken = (words: string): string => words.replaceAll(' ', '\u00a0');

/** The marks that have a size in a measured face; pixels are nothing to an owner. */
export function measuredMarks(marks: readonly Mark[], { record, shop }: ReportContext): MeasuredMark[] {
  return marks.flatMap((mark) => {
    const size = record.sizes.find(({ markId }) => markId === mark.id);
    const plane = record.calibrations.find(({ id }) => id === mark.calibrationId);
    if (!size || !plane || size.size.expanded === null) return [];
    return { mark, plane, words: unbroken(sizeWords(size.size, shop.units)), warnings: sizeWarnings(size.size) };
  });
}

/** Sizes with what the scale was taken from, for the caption. */
export function saysMeasured(measured: readonly MeasuredMark[], { shop }: ReportContext): string {
  const byPlane = Map.groupBy(measured, ({ plane }) => plane.id);
  const sentences = [...byPlane.values()].flatMap((group) => {
    const [first] = group;
    if (!first) return [];
    const sizes = listed(
      group.map(({ words }) => words),
      'and',
    );
    const from = `scale from ${referenceWords(first.plane.reference, shop.units)} in this face: ${first.plane.plane}`;
    return [
      asSentence(`measured in this photo: ${sizes}; ${from}`),
      ...new Set(group.flatMap(({ warnings }) => warnings)),
    ];
  });
  return sentences.length === 0 ? '' : [...sentences, reportWords.plusMinus].join(' ');
}
