import { type ComputedLine, sheet } from '../sheet-kind.ts';
import { ceilingPpm } from './limits.ts';
import { carbonMonoxideSheet } from './sheet.ts';

export const carbonMonoxide = sheet(
  carbonMonoxideSheet,
  (given) => {
    const readings = given.list('reading');
    if (readings === null) return { lines: [] };
    const highest = Math.max(...readings);
    const exhaust = given.word('where') === 'in the exhaust';
    const lines: ComputedLine<keyof typeof carbonMonoxideSheet.results>[] = [
      { of: 'carbon monoxide', value: highest, ...(exhaust ? { limit: null } : {}) },
    ];
    const background = given.number('background');
    if (background !== null) lines.push({ of: 'above outdoors', value: highest - background });
    return {
      lines,
      says: [
        'One moment only; the limits are means over a shift.',
        ...(exhaust ? ['Exhaust gas is not air to breathe: it is recorded, not judged.'] : []),
        ...(!exhaust && highest > ceilingPpm
          ? ['Over 200 ppm nobody stays: stop the engine and go out into fresh air.']
          : []),
      ],
    };
  },
  (given) => {
    const [readings, background] = [given.list('reading'), given.number('background')];
    return readings !== null && background !== null && background > Math.max(...readings)
      ? [
          {
            input: 'background',
            weight: 'odd',
            what: 'More outdoors than inside is unusual; was the instrument zeroed?',
          },
        ]
      : [];
  },
);
