import { type CheckProblem, type ComputedLine, sheet } from '../sheet-kind.ts';
import { lengthOffMm } from './limits.ts';
import { crackGrowthSheet } from './sheet.ts';

export const crackGrowth = sheet(
  crackGrowthSheet,
  (given) => {
    const [before, now] = [given.number('before'), given.number('now')];
    if (before === null || now === null) return { lines: [] };
    if (given.word('part') === 'changed between') {
      return { lines: [{ of: 'growth', seen: false }], void: 'the part was changed between the two readings' };
    }
    const how = given.word('how') === 'scaled photo' ? 'scaled photo' : 'scale on the part';
    // The ± of one length says nothing of the other.
    const off = Math.max(given.uncertainty('before') ?? lengthOffMm[how], given.uncertainty('now') ?? lengthOffMm[how]);
    const growth = now - before;
    // 1e-9: twice 0.5 and 1.0 are the same edge, whatever binary arithmetic makes of them.
    const shown = growth >= 2 * off * (1 - 1e-9);
    const lines: ComputedLine<keyof typeof crackGrowthSheet.results>[] = [
      {
        of: 'growth',
        value: growth,
        seen: shown,
        notSeen: 'no growth shown',
        uncertainty: {
          value: 2 * off,
          from: `twice what a length can be off by (${off} mm, ${how}); common practice, no source`,
        },
      },
    ];
    const [hoursBefore, hoursNow] = [given.number('hoursBefore'), given.number('hoursNow')];
    if (hoursBefore !== null && hoursNow !== null && hoursNow > hoursBefore) {
      lines.push({ of: 'per 100 h', value: (growth / (hoursNow - hoursBefore)) * 100 });
    }
    return {
      lines,
      says: [
        'Growth on structure usually speeds up: no safe life can be told from two lengths.',
        'A stop hole only delays; on structure it is for the maker or a licensed person to decide.',
      ],
    };
  },
  (given) => {
    const problems: CheckProblem[] = [];
    const [before, now, hoursBefore, hoursNow] = [
      given.number('before'),
      given.number('now'),
      given.number('hoursBefore'),
      given.number('hoursNow'),
    ];
    if (hoursBefore !== null && hoursNow !== null && hoursNow < hoursBefore) {
      problems.push({ input: 'hoursNow', weight: 'impossible', what: 'True hours cannot fall.' });
    }
    if (before !== null && now !== null && now < before - 2) {
      problems.push({ input: 'now', weight: 'odd', what: 'Cracks do not shrink; was it between the same ends?' });
    }
    return problems;
  },
);
