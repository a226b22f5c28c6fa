import type { ReadInputs } from '../read-inputs.ts';
import { type CheckProblem, type ComputedLine, sheet } from '../sheet-kind.ts';
import { wholePercent } from './limits.ts';
import { sweptAreaSheet } from './sheet.ts';

type Given = ReadInputs<keyof typeof sweptAreaSheet.inputs | keyof typeof sweptAreaSheet.conditions>;

const wholeOf = (given: Given): number | null => {
  const [whole, diameter, swept] = [given.number('whole'), given.number('diameter'), given.number('swept')];
  return whole ?? (diameter === null || swept === null ? null : Math.PI * diameter * swept);
};

const markedOf = (given: Given): number | null => {
  const parts = given.list('markedParts');
  return given.number('marked') ?? (parts === null ? null : parts.reduce((total, each) => total + each, 0));
};

export const sweptArea = sheet(
  sweptAreaSheet,
  (given) => {
    const [whole, marked, seen] = [wholeOf(given), markedOf(given), given.number('seen')];
    const lines: ComputedLine<keyof typeof sweptAreaSheet.results>[] = [];
    if (whole !== null && given.number('whole') === null) lines.push({ of: 'whole area', value: whole });
    if (whole !== null && marked !== null) {
      const coverage = (marked / whole) * wholePercent;
      lines.push({ of: 'coverage', value: coverage });
      if (seen !== null) lines.push({ of: 'at most', value: Math.min(wholePercent, coverage + wholePercent - seen) });
    }
    return {
      lines,
      says: seen !== null && seen < wholePercent ? [`${wholePercent - seen} % of the face could not be seen.`] : [],
    };
  },
  (given) => {
    const problems: CheckProblem[] = [];
    const [whole, marked] = [wholeOf(given), markedOf(given)];
    if (whole !== null && marked !== null && marked > whole) {
      problems.push({
        input: given.number('marked') === null ? 'markedParts' : 'marked',
        weight: 'impossible',
        what: 'More cannot be marked than there is.',
      });
    }
    return problems;
  },
);
