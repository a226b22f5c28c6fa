import { type CheckProblem, type ComputedLine, sheet } from '../sheet-kind.ts';
import { lookUp } from '../standards/lookup.ts';
import { freezesAtC, mostUsefulGlycol } from './limits.ts';
import { coolantConditionSheet } from './sheet.ts';

export const coolantCondition = sheet(
  coolantConditionSheet,
  (given) => {
    const glycol = given.number('glycol');
    const lines: ComputedLine<keyof typeof coolantConditionSheet.results>[] = [];
    const says: string[] = [];
    if (glycol !== null) {
      lines.push({ of: 'glycol', value: glycol });
      if (given.word('glycolKind') !== 'propylene' && glycol <= mostUsefulGlycol) {
        lines.push({
          of: 'freezes at',
          value: lookUp(freezesAtC, glycol),
          limit: null,
          uncertainty: { value: glycol <= 50 ? 2 : 4, from: 'published tables against each other' },
        });
      }
      if (glycol === 0) says.push('Plain water: look for pitting of the liners, scale and rust.');
      if (glycol > mostUsefulGlycol) says.push('Over about 60 % it freezes warmer again and carries heat worse.');
    }
    const pH = given.number('pH');
    if (pH !== null) lines.push({ of: 'pH', value: pH });
    const film = given.word('oilFilm');
    if (film !== null) lines.push({ of: 'oil film', seen: film === 'yes' });
    return { lines, says };
  },
  (given) => {
    const problems: CheckProblem[] = [];
    const [glycol, freezes] = [given.number('glycol'), given.number('freezes')];
    if (glycol !== null && freezes !== null && glycol <= mostUsefulGlycol && given.word('glycolKind') !== 'propylene') {
      const expected = lookUp(freezesAtC, glycol);
      if (Math.abs(freezes - expected) > 8) {
        problems.push({
          input: 'freezes',
          weight: 'odd',
          what: `Ethylene glycol of ${glycol} % freezes near ${expected.toFixed(0)} °C; is the refractometer’s scale for this kind of glycol?`,
        });
      }
    }
    return problems;
  },
);
