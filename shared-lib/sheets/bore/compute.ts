import { type CheckProblem, type ComputedLine, sheet } from '../sheet-kind.ts';
import { at20C } from '../standards/expansion.ts';
import { columnsOf, spreadOf } from '../two-point-sizes.ts';
import { cleanUpMm } from './limits.ts';
import { boreSheet } from './sheet.ts';

export const bore = sheet(
  boreSheet,
  (given) => {
    const typed = given.rows('diameters');
    if (typed === null) return { lines: [] };
    const temperatureC = given.number('temperature');
    const rows =
      temperatureC === null ? typed : typed.map((row) => row.map((each) => at20C(each, temperatureC, 'iron')));
    const nominal = given.number('nominal');
    const largest = Math.max(...rows.flat());
    const lines: ComputedLine<keyof typeof boreSheet.results>[] = [];
    const says: string[] = [];
    if (nominal !== null) lines.push({ of: 'wear', value: largest - nominal });
    if (rows.length > 1) lines.push({ of: 'taper', value: Math.max(...columnsOf(rows).map(spreadOf)) });
    if ((rows[0]?.length ?? 0) > 1) lines.push({ of: 'out of round', value: Math.max(...rows.map(spreadOf)) });
    const steps = given.list('steps');
    if (nominal !== null && steps !== null) {
      const needed = Math.max(largest, nominal + 2 * (given.number('oneSided') ?? 0)) + cleanUpMm;
      const step = [...steps].sort((a, b) => a - b).find((each) => nominal + each >= needed - 1e-9);
      if (step !== undefined) lines.push({ of: 'next oversize', value: step });
      says.push(
        step === undefined
          ? `None of the oversizes cleans it up; it needs ${needed.toFixed(3)} mm.`
          : `It needs ${needed.toFixed(3)} mm to clean up. The wall left must be measured before a parent bore is cut.`,
      );
    }
    if (rows.flat().length < 6)
      says.push(
        'Fewer than six readings: three depths in two directions are the least that tell taper and out-of-round.',
      );
    if (temperatureC !== null) says.push('Sizes are brought to 20 °C, for iron.');
    return {
      lines,
      says,
      picture: { kind: 'bore', nominalMm: nominal, depthsMm: given.list('depths'), diametersMm: rows },
    };
  },
  (given) => {
    const problems: CheckProblem[] = [];
    const [rows, nominal, depths] = [given.rows('diameters'), given.number('nominal'), given.list('depths')];
    if (rows !== null && nominal !== null) {
      const astray = rows.flat().find((each) => Math.abs(each - nominal) > 0.05 * nominal);
      if (astray !== undefined) {
        problems.push({
          input: 'diameters',
          weight: 'impossible',
          what: `${astray} mm cannot be a reading of a ${nominal} mm bore.`,
        });
      } else if (Math.min(...rows.flat()) < nominal - 0.05) {
        problems.push({
          input: 'diameters',
          weight: 'odd',
          what: 'A bore smaller than new is unusual; is the gauge set right?',
        });
      }
    }
    if (rows !== null && depths !== null && depths.length !== rows.length) {
      problems.push({
        input: 'depths',
        weight: 'impossible',
        what: `There are ${rows.length} rows of diameters and ${depths.length} depths.`,
      });
    }
    return problems;
  },
);
