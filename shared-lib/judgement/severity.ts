import type { Severity } from '../model/finding.ts';

export interface SeverityWords {
  readonly severity: Severity;
  /** The category's name in the standard. */
  readonly name: string;
  /** Its sense, in our own words. */
  readonly sense: string;
  /** What that looks like in this trade. */
  readonly examples: readonly string[];
}

/**
 * The worst credible outcome for people.
 * Source: MIL-STD-882E (11 May 2012), Table I, category names and sense; examples: common practice, no source.
 * The standard's money bands are made for programmes and are left out: what waiting costs is a judgement of its own.
 */
export const severities: readonly SeverityWords[] = [
  {
    severity: 1,
    name: 'Catastrophic',
    sense: 'Somebody could be killed or disabled for life, or the ground or water spoiled for good.',
    examples: ['run over', 'crushed', 'machine turns over', 'load falls', 'fire with a person trapped'],
  },
  {
    severity: 2,
    name: 'Critical',
    sense: 'Somebody could lose part of their working body for life, or several could be taken to hospital.',
    examples: ['amputation', 'fluid through the skin', 'severe burn', 'loss of an eye'],
  },
  {
    severity: 3,
    name: 'Marginal',
    sense: 'Somebody could lose a day of work or more, or a spill would have to be cleaned up.',
    examples: ['sprain', 'ordinary burn', 'cut', 'spill to clean up'],
  },
  {
    severity: 4,
    name: 'Negligible',
    sense: 'At most a small injury with no day lost.',
    examples: ['scratch', 'small drip'],
  },
];

export function severityWords(severity: Severity): SeverityWords {
  const found = severities.find((words) => words.severity === severity);
  if (found === undefined) throw new RangeError(`no severity ${severity}`);
  return found;
}
