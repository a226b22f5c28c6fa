import type { Registration } from '../../shared-lib/comparison/register.ts';
import type { EarlierShot } from '../../shared-lib/contract/comparisons.ts';
import { countWords, dateWords, hoursWords } from '../ui/words.ts';

/** `6 October 2025 at 4 180 h`. */
export function thenWords({ date, trueHours }: Pick<EarlierShot, 'date' | 'trueHours'>): string {
  return `${dateWords(date)}${trueHours === null ? '' : ` at ${hoursWords(trueHours)}`}`;
}

export const becauseWords: Readonly<Record<EarlierShot['because'], string>> = {
  'same-finding': 'shows the same finding',
  'same-part': 'the same part',
  'same-machine': 'another part, or not said',
};

/** How well the two photos lie over each other. */
export function fitWords({ pairs, rmsPx, model }: Registration): string {
  const points = countWords(pairs.length, 'matching point');
  if (model === 'similarity') {
    return `${points}: the earlier photo is turned and scaled only. Four or more also take out that the camera stood elsewhere.`;
  }
  if (pairs.length === 4) return `${points}: four always fit. A fifth would check them.`;
  return `${points}, ${rmsPx < 0.05 ? 'exactly over each other' : `${rmsPx.toFixed(1)} px apart once laid over each other`}.`;
}
