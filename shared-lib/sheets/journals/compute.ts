import { type CheckProblem, type ComputedLine, sheet } from '../sheet-kind.ts';
import { columnsOf, spreadOf } from '../two-point-sizes.ts';
import { cleanUpMm, newClearance } from './limits.ts';
import { journalsSheet } from './sheet.ts';

export const journals = sheet(
  journalsSheet,
  (given) => {
    const lines: ComputedLine<keyof typeof journalsSheet.results>[] = [];
    const says: string[] = [];
    const rows = given.rows('diameters');
    const whenNew = given.number('whenNew');
    const [shell, strip] = [given.number('shell'), given.number('strip')];
    if (rows !== null) {
      const [smallest, largest] = [Math.min(...rows.flat()), Math.max(...rows.flat())];
      if (whenNew !== null) lines.push({ of: 'wear', value: whenNew - smallest });
      if ((rows[0]?.length ?? 0) > 1) lines.push({ of: 'out of round', value: Math.max(...rows.map(spreadOf)) });
      if (rows.length > 1) lines.push({ of: 'taper', value: Math.max(...columnsOf(rows).map(spreadOf)) });
      if (shell !== null) {
        const limit = given.word('shells') === 'new' ? newClearance(whenNew ?? largest) : null;
        lines.push(
          { of: 'clearance on the largest', value: shell - largest, limit },
          { of: 'clearance on the smallest', value: shell - smallest, limit },
        );
        says.push('The clearance on the smallest diameter is the one that counts against a limit.');
      }
      const steps = given.list('steps');
      if (whenNew !== null && steps !== null) {
        const step = [...steps].sort((a, b) => a - b).find((each) => whenNew - each <= smallest - cleanUpMm + 1e-9);
        if (step !== undefined) lines.push({ of: 'next undersize', value: step });
        else says.push('None of the undersizes cleans it up.');
        says.push('Grinding a hardened crank is for a machine shop to judge.');
      }
    }
    if (strip !== null) lines.push({ of: 'clearance by strip', value: strip });
    const [endFloat, runOut] = [given.number('endFloat'), given.number('runOut')];
    if (endFloat !== null) lines.push({ of: 'end float', value: endFloat });
    if (runOut !== null) lines.push({ of: 'run-out', value: runOut });
    return { lines, says };
  },
  (given) => {
    const problems: CheckProblem[] = [];
    const [rows, shell, whenNew] = [given.rows('diameters'), given.number('shell'), given.number('whenNew')];
    if (rows !== null && shell !== null && Math.max(...rows.flat()) > shell) {
      problems.push({
        input: 'shell',
        weight: 'impossible',
        what: 'The journal does not go into shells smaller than itself.',
      });
    }
    if (rows !== null && whenNew !== null && Math.max(...rows.flat()) > whenNew + 0.05) {
      problems.push({
        input: 'diameters',
        weight: 'odd',
        what: 'The journal measures larger than new; is the size when new right?',
      });
    }
    return problems;
  },
);
