import type { Tier } from '../contract/standing.ts';

export interface TierWords {
  readonly tier: Tier;
  /** The heading over the tier's lines. */
  readonly heading: string;
  /** Inside a sentence. */
  readonly words: string;
  readonly sense: string;
}

/** From first to last. The words are what people read; the numbers are for the program. */
export const tiers: readonly TierWords[] = [
  {
    tier: 0,
    heading: 'Do not operate',
    words: 'do not operate',
    sense: 'Somebody could be badly hurt. The machine stays out of use until this is mended.',
  },
  {
    tier: 1,
    heading: 'Fix before work',
    words: 'fix before work',
    sense: 'Mend or examine it before the machine works again, or work only inside the limits written down.',
  },
  {
    tier: 2,
    heading: 'Do not run',
    words: 'do not run',
    sense: 'Running makes the damage grow. This protects the engine, not people.',
  },
  {
    tier: 3,
    heading: 'Will fail or cost more',
    words: 'will fail or cost more',
    sense: 'It will stop the machine, or waiting makes it dearer.',
  },
  { tier: 4, heading: 'Note', words: 'note', sense: 'Keep an eye on it.' },
];

export function tierWords(tier: Tier): TierWords {
  const found = tiers.find((words) => words.tier === tier);
  if (found === undefined) throw new RangeError(`no tier ${tier}`);
  return found;
}
