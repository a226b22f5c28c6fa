import { type ComputedLine, sheet } from '../sheet-kind.ts';
import { holds, opens } from './limits.ts';
import { pressureCapSheet } from './sheet.ts';

export const pressureCap = sheet(
  pressureCapSheet,
  (given) => {
    const rating = given.number('rating');
    const tries = given.list('opens');
    const held = given.number('holds');
    const lines: ComputedLine<keyof typeof pressureCapSheet.results>[] = [];
    const says: string[] = [];
    if (tries !== null) {
      const furthest = tries.reduce((worst, each) =>
        rating !== null && Math.abs(each - rating) > Math.abs(worst - rating) ? each : worst,
      );
      const halfSpread = (Math.max(...tries) - Math.min(...tries)) / 2;
      lines.push({
        of: 'opens',
        value: furthest,
        limit: rating === null ? null : opens(rating),
        ...(halfSpread > 0.02 * furthest
          ? { uncertainty: { value: halfSpread, from: 'half the spread of the tries' } }
          : {}),
      });
      if (tries.length > 1) says.push(`Opened at ${tries.join(', ')} kPa.`);
    }
    if (held !== null) lines.push({ of: 'holds', value: held, limit: rating === null ? null : holds(rating) });
    const vacuum = given.number('vacuum');
    if (vacuum !== null) lines.push({ of: 'vacuum', value: vacuum });
    const valve = given.word('vacuumValve');
    if (valve !== null) {
      lines.push({ of: 'vacuum valve stuck', seen: valve !== 'free' });
      if (valve === 'stuck shut')
        says.push('A stuck vacuum valve collapses the hose on cooling: look for a flat hose in the morning.');
    }
    const wanted = given.number('wanted');
    if (rating !== null && wanted !== null)
      lines.push({ of: 'wrong cap', seen: Math.abs(rating - wanted) > 0.02 * wanted });
    return { lines, says };
  },
  (given) => {
    const tries = given.list('opens');
    const held = given.number('holds');
    return tries !== null && held !== null && held > Math.max(...tries) * 1.05
      ? [{ input: 'holds', weight: 'impossible', what: 'A cap cannot hold more than the pressure at which it opens.' }]
      : [];
  },
);
