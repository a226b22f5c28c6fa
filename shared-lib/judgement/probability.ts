import type { Probability } from '../model/finding.ts';

export interface ProbabilityWords {
  readonly probability: Probability;
  /** The level's name in the standard. */
  readonly name: string;
  /** Its sense over the exposure the visit states (hours of this owner's use). */
  readonly sense: string;
}

/**
 * How likely the worst outcome is over the exposure that the visit states.
 * Source: MIL-STD-882E (11 May 2012), Table II, level names and sense in our own words.
 */
export const probabilities: readonly ProbabilityWords[] = [
  { probability: 'A', name: 'Frequent', sense: 'will happen often in these hours' },
  { probability: 'B', name: 'Probable', sense: 'will happen several times in these hours' },
  { probability: 'C', name: 'Occasional', sense: 'likely to happen sometime in these hours' },
  { probability: 'D', name: 'Remote', sense: 'unlikely, but it can happen' },
  { probability: 'E', name: 'Improbable', sense: 'so unlikely that it is not expected' },
  {
    probability: 'F',
    name: 'Eliminated',
    sense: 'cannot happen: the defect is physically gone. A sign, a warning or gloves never earn this',
  },
];

export function probabilityWords(probability: Probability): ProbabilityWords {
  const found = probabilities.find((words) => words.probability === probability);
  if (found === undefined) throw new RangeError(`no probability ${probability}`);
  return found;
}

/**
 * What of the machine's use makes harm likelier. Each that holds shifts the letter by one, by the mechanic's hand:
 * the program names them and shifts nothing. Common practice, no source.
 */
export const exposureReminders: readonly string[] = [
  'works on slopes or on the road',
  'people work or walk near it',
  'others than the owner use it',
  'loads are carried overhead',
  'works at night',
  'works indoors',
];
