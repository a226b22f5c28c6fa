import { type CheckProblem, type ComputedLine, sheet } from '../sheet-kind.ts';
import { hydraulicPressureSheet } from './sheet.ts';

export const hydraulicPressure = sheet(
  hydraulicPressureSheet,
  (given) => {
    const lines: ComputedLine<keyof typeof hydraulicPressureSheet.results>[] = [];
    const relief = given.number('relief');
    if (relief !== null) lines.push({ of: 'relief', value: relief });
    const [bore, stroke, seconds] = [given.number('bore'), given.number('stroke'), given.number('time')];
    if (bore !== null && stroke !== null && seconds !== null) {
      const areaMm2 = (Math.PI * (bore ** 2 - (given.number('rod') ?? 0) ** 2)) / 4;
      const litres = (areaMm2 * stroke * (given.number('cylinders') ?? 1)) / 1e6;
      lines.push({ of: 'flow', value: litres / (seconds / 60) });
    }
    const [loaded, unloaded] = [given.number('loaded'), given.number('unloaded')];
    if (loaded !== null && unloaded !== null) lines.push({ of: 'left under load', value: (loaded / unloaded) * 100 });
    const vacuum = given.number('inletVacuum');
    if (vacuum !== null) lines.push({ of: 'inlet vacuum', value: vacuum });
    return { lines };
  },
  (given) => {
    const problems: CheckProblem[] = [];
    const [bore, rod] = [given.number('bore'), given.number('rod')];
    if (bore !== null && rod !== null && rod >= bore) {
      problems.push({
        input: 'rod',
        weight: 'impossible',
        what: `A rod of ${rod} mm does not go into a bore of ${bore} mm.`,
      });
    }
    const [loaded, unloaded] = [given.number('loaded'), given.number('unloaded')];
    if (loaded !== null && unloaded !== null && loaded > 1.05 * unloaded) {
      problems.push({
        input: 'loaded',
        weight: 'odd',
        what: 'A pump gives no more under load than without; was the speed the same?',
      });
    }
    return problems;
  },
);
