import { type CheckProblem, type ComputedLine, sheet } from '../sheet-kind.ts';
import { chainAndForkSheet } from './sheet.ts';

export const chainAndFork = sheet(
  chainAndForkSheet,
  (given) => {
    const lines: ComputedLine<keyof typeof chainAndForkSheet.results>[] = [];
    const [pitches, pitch, measured] = [given.number('pitches'), given.number('pitch'), given.number('measured')];
    if (pitches !== null && pitch !== null && measured !== null) {
      const nominal = pitches * pitch;
      lines.push({ of: 'elongation', value: ((measured - nominal) / nominal) * 100 });
    }
    const [heelNew, heel] = [given.number('heelNew'), given.number('heel')];
    if (heelNew !== null && heel !== null) lines.push({ of: 'heel loss', value: ((heelNew - heel) / heelNew) * 100 });
    for (const each of ['tread', 'opening', 'reach'] as const) {
      const value = given.number(each);
      if (value !== null) lines.push({ of: each, value });
    }
    return { lines };
  },
  (given) => {
    const problems: CheckProblem[] = [];
    const [pitches, pitch, measured] = [given.number('pitches'), given.number('pitch'), given.number('measured')];
    if (pitches !== null && !Number.isInteger(pitches)) {
      problems.push({ input: 'pitches', weight: 'impossible', what: 'Pitches are counted whole.' });
    } else if (pitches !== null && pitch !== null && measured !== null) {
      const share = measured / (pitches * pitch);
      if (share < 0.98 || share > 1.25) {
        problems.push({
          input: 'measured',
          weight: 'impossible',
          what: `${pitches} pitches of ${pitch} mm cannot be ${measured} mm long; count again.`,
        });
      }
    }
    const [heelNew, heel] = [given.number('heelNew'), given.number('heel')];
    if (heelNew !== null && heel !== null && heel > heelNew * 1.02) {
      problems.push({ input: 'heel', weight: 'impossible', what: 'A fork does not grow thicker than new.' });
    }
    return problems;
  },
);
