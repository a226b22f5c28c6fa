import { type ComputedLine, sheet } from '../sheet-kind.ts';
import { at20C, metalNamed } from '../standards/expansion.ts';
import { endGap } from './limits.ts';
import { pistonClearanceSheet } from './sheet.ts';

export const pistonClearance = sheet(
  pistonClearanceSheet,
  (given) => {
    const [bore, skirt] = [given.number('bore'), given.number('skirt')];
    const lines: ComputedLine<keyof typeof pistonClearanceSheet.results>[] = [];
    const says: string[] = [];
    if (bore !== null && skirt !== null) {
      const [boreC, skirtC] = [given.number('boreTemperature'), given.number('skirtTemperature')];
      const [boreMetal, skirtMetal] = [
        metalNamed(given.word('boreMetal')) ?? 'iron',
        metalNamed(given.word('skirtMetal')) ?? 'aluminium',
      ];
      lines.push(
        { of: 'clearance', value: at20C(bore, boreC ?? 20, boreMetal) - at20C(skirt, skirtC ?? 20, skirtMetal) },
        { of: 'clearance as read', value: bore - skirt },
      );
      if (boreC === null || skirtC === null) says.push('Without both temperatures 20 °C is taken.');
    }
    const gap = given.number('endGap');
    if (gap !== null) {
      const ring = given.word('ring');
      const known = ring === 'new' || ring === 'worn';
      lines.push({ of: 'end gap', value: gap, limit: bore !== null && known ? endGap(bore, ring) : null });
    }
    const side = given.number('sideClearance');
    if (side !== null) lines.push({ of: 'side clearance', value: side });
    return { lines, says };
  },
  (given) => {
    const [bore, skirt] = [given.number('bore'), given.number('skirt')];
    if (bore === null || skirt === null) return [];
    if (skirt > bore * 1.002) {
      return [
        {
          input: 'skirt',
          weight: 'impossible',
          what: `A piston of ${skirt} mm does not go into a bore of ${bore} mm.`,
        },
      ];
    }
    return bore - skirt > 0.02 * bore
      ? [
          {
            input: 'skirt',
            weight: 'odd',
            what: 'That is a very large clearance; are both sizes of the same cylinder?',
          },
        ]
      : [];
  },
);
