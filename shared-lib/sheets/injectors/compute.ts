import { type ComputedLine, sheet } from '../sheet-kind.ts';
import { spreadOf } from '../two-point-sizes.ts';
import { drySeconds, opening } from './limits.ts';
import { injectorsSheet } from './sheet.ts';

const medianOf = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length / 2;
  return ((sorted[Math.ceil(middle) - 1] ?? Number.NaN) + (sorted[Math.floor(middle)] ?? Number.NaN)) / 2;
};

export const injectors = sheet(injectorsSheet, (given) => {
  const lines: ComputedLine<keyof typeof injectorsSheet.results>[] = [];
  const says: string[] = [];
  const leakBack = given.list('leakBack');
  if (leakBack !== null && leakBack.length > 1) {
    const median = medianOf(leakBack);
    if (median > 0) lines.push({ of: 'leak-back ratio', value: leakBack.map((each) => each / median) });
    else says.push('The middle leak-back is nothing, so there is no ratio to it.');
  }
  const opens = given.list('opens');
  const set = given.number('set');
  if (opens !== null) {
    lines.push({ of: 'opening', value: opens, limit: set === null ? null : opening(set) });
    if (opens.length > 1) lines.push({ of: 'opening spread', value: spreadOf(opens) });
  }
  const dry = given.list('drySeconds');
  if (dry !== null) lines.push({ of: 'seat not dry', seen: dry.some((each) => each < drySeconds) });
  const spray = given.word('spray');
  if (spray !== null) lines.push({ of: 'bad spray', seen: spray !== 'even' });
  const bars = leakBack ?? opens;
  return {
    lines,
    says,
    ...(bars === null
      ? {}
      : {
          picture: {
            kind: 'bars',
            unit: leakBack === null ? 'bar' : 'mL',
            values: bars,
            labels: bars.map((_, index) => String(index + 1)),
          },
        }),
  };
});
