import { packedCoverage } from './covered-code-points.ts';

interface FamilyCoverage {
  readonly family: string;
  /** First code points of the covered ranges, rising. */
  readonly firsts: readonly number[];
  readonly lasts: readonly number[];
}

const coverage: readonly FamilyCoverage[] = packedCoverage.map(([family, packed]) => {
  const firsts: number[] = [];
  const lasts: number[] = [];
  let end = 0;
  for (const range of packed.split(' ')) {
    const [distance = '0', length = '0'] = range.split('.');
    firsts.push(end + Number.parseInt(distance, 36));
    end += Number.parseInt(distance, 36) + Number.parseInt(length, 36);
    lasts.push(end);
  }
  return { family, firsts, lasts };
});

/** The families the typesetter tries, in this order. */
export const fontFamilies: readonly string[] = coverage.map(({ family }) => family);

function covers({ firsts, lasts }: FamilyCoverage, codePoint: number): boolean {
  let low = 0;
  let high = firsts.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((firsts[middle] ?? 0) <= codePoint) low = middle + 1;
    else high = middle;
  }
  return low > 0 && codePoint <= (lasts[low - 1] ?? -1);
}

/** Whether one shipped family holds all of these: a letter and the marks over it must come from the same font. */
export function oneFontCovers(codePoints: readonly number[]): boolean {
  return coverage.some((family) => codePoints.every((codePoint) => covers(family, codePoint)));
}
