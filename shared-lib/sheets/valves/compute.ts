import { type ComputedLine, sheet } from '../sheet-kind.ts';
import { stemClearance } from './limits.ts';
import { valvesSheet } from './sheet.ts';

/**
 * Play of a stem in its guide from rocking it against a dial.
 *
 * Source: a stem that tips from corner to corner of a guide moves, beyond it, by clearance × (1 + 2e/L).
 */
export const clearanceByRocking = (rockMm: number, beyondMm: number, guideLengthMm: number): number =>
  rockMm / (1 + (2 * beyondMm) / guideLengthMm);

export const valves = sheet(
  valvesSheet,
  (given) => {
    const valve = given.word('valve');
    const limit = valve === 'intake' || valve === 'exhaust' ? stemClearance[valve] : null;
    const [guide, stem] = [given.number('guide'), given.number('stem')];
    const [rock, beyond, length] = [given.number('rock'), given.number('beyond'), given.number('guideLength')];
    const bySize = guide === null || stem === null ? null : guide - stem;
    const byRocking =
      rock === null || beyond === null || length === null ? null : clearanceByRocking(rock, beyond, length);
    const lines: ComputedLine<keyof typeof valvesSheet.results>[] = [];
    const clearance = bySize ?? byRocking;
    if (clearance !== null) {
      lines.push({
        of: 'stem clearance',
        value: clearance,
        limit,
        ...(bySize !== null && byRocking !== null ? { crossCheck: { value: byRocking, formula: 'by rocking' } } : {}),
      });
    }
    const [recession, whenNew] = [given.number('recession'), given.number('newRecession')];
    if (recession !== null) lines.push({ of: 'recession', value: recession });
    if (recession !== null && whenNew !== null) lines.push({ of: 'sunk since new', value: recession - whenNew });
    const [seatWidth, runOut, margin] = [given.number('seatWidth'), given.number('runOut'), given.number('margin')];
    if (seatWidth !== null) lines.push({ of: 'seat width', value: seatWidth });
    if (runOut !== null) lines.push({ of: 'run-out', value: runOut });
    if (margin !== null) lines.push({ of: 'edge left', value: margin });
    return {
      lines,
      says:
        clearance !== null && limit === null
          ? ['Intake or exhaust was not said, so the stem’s play is not judged.']
          : [],
    };
  },
  (given) => {
    const [guide, stem] = [given.number('guide'), given.number('stem')];
    return guide !== null && stem !== null && stem > guide
      ? [{ input: 'stem', weight: 'impossible', what: `A stem of ${stem} mm does not go into a guide of ${guide} mm.` }]
      : [];
  },
);
