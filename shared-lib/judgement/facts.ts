import type { FindingFact } from '../model/finding.ts';

/** What a do-not-operate condition asks and no other field says, as a line to tick. */
export const factWords: Readonly<Record<FindingFact, string>> = {
  'past-limit': 'It is past its limit',
  'under-load': 'It moves under the load it has to hold',
  'through-load-path': 'It runs through the part that carries the load',
  'growth-shown': 'It has been shown to grow',
  'to-reinforcement': 'It goes down to the wire or braid',
  'load-holding-line': 'The line holds a load up',
  'no-lock-valve': 'No lock valve between it and the load',
  pressurised: 'It is under pressure',
  'near-heat': 'It is near heat',
  'fuel-in-sump': 'There is fuel in the engine oil',
  'fluid-in-cylinder': 'There is fluid on top of a piston',
  'creeps-on-slope-used': 'It creeps on the slope it works on',
  'other-hold': 'Something else can hold it',
  'people-reach': 'People can reach it',
  'co-above-limit-indoors': 'Carbon monoxide indoors is above the local limit',
  'over-charged': 'The battery is over-charged',
  'bare-full-current': 'A cable at full current is bare',
  'raised-unsupported': 'A raised part has no proper support for the job in hand',
  'charred-seal': 'A seal is charred by heat',
};
