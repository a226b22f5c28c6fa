import { says } from './said.ts';

/** What an owner or a mechanic says of a machine, and the sheets that ask about it, first what is soonest done. */
export interface Symptom {
  /** As people say it back: `runs hot`. */
  readonly name: string;
  /** Beginnings of words, in lower case. */
  readonly said: readonly string[];
  readonly sheets: readonly string[];
}

/** Common practice, no source: the handbook's chapter 5 says of each sheet what it answers. */
export const symptoms: readonly Symptom[] = [
  {
    name: 'runs hot',
    said: ['runs hot', 'running hot', 'overheat', 'boil', 'too hot', 'temperature high', 'gauge red'],
    sheets: ['MS-08', 'MS-06', 'MS-26', 'MS-07', 'MS-09'],
  },
  {
    name: 'loses coolant',
    said: [
      ...['uses water', 'uses coolant', 'loses water', 'loses coolant', 'losing coolant', 'losing water'],
      ...['wants water', 'litre coolant', 'litre water', 'coolant gone', 'coolant loss', 'tops up coolant'],
    ],
    sheets: ['MS-07', 'MS-06', 'MS-09', 'MS-29'],
  },
  {
    name: 'oil and coolant mix',
    said: [
      'milky',
      'emulsion',
      'oil grey',
      'grey oil',
      'oil level up',
      'water in oil',
      'coolant in oil',
      'oil in coolant',
    ],
    sheets: ['MS-27', 'MS-07', 'MS-26', 'MS-29'],
  },
  {
    name: 'smokes',
    said: ['smok', 'breather', 'blow by', 'blowby'],
    sheets: ['MS-10', 'MS-11', 'MS-18'],
  },
  {
    name: 'is down on power',
    said: ['down on power', 'low power', 'lost power', 'lost pull', 'no power', 'power down', 'weak engine', 'misfir'],
    sheets: ['MS-10', 'MS-18', 'MS-11'],
  },
  {
    name: 'turns over slowly',
    said: [
      'slow turn',
      'slow crank',
      'slow start',
      'cranks slow',
      'turns slow',
      'hard start',
      'starts hard',
      'would not start',
    ],
    sheets: ['MS-01', 'MS-03', 'MS-04', 'MS-02', 'MS-10'],
  },
  {
    name: 'does not charge',
    said: ['not charg', 'battery flat', 'flat battery', 'charge lamp', 'charging lamp', 'charge light'],
    sheets: ['MS-05', 'MS-01', 'MS-02'],
  },
  {
    name: 'uses oil',
    said: ['uses oil', 'burns oil', 'loses oil', 'oil consumption', 'oil out breather'],
    sheets: ['MS-27', 'MS-10', 'MS-11'],
  },
  {
    name: 'has little oil pressure',
    said: ['oil pressure', 'pressure light', 'oil light', 'oil lamp'],
    sheets: ['MS-27', 'MS-17'],
  },
  {
    name: 'knocks',
    said: ['knock', 'rattl', 'bang', 'clatter'],
    sheets: ['MS-27', 'MS-18', 'MS-17', 'MS-15'],
  },
  {
    name: 'sinks or drops under load',
    said: ['sink', 'drops', 'dropping', 'drift', 'creeps down', 'comes down', 'will not hold up', 'not stay up'],
    sheets: ['MS-20', 'MS-25'],
  },
  {
    name: 'lifts slowly or weakly',
    said: ['lifts slow', 'slow lift', 'lift weak', 'weak lift', 'slow hydraulic', 'weak hydraulic', 'will not lift'],
    sheets: ['MS-25', 'MS-20'],
  },
  {
    name: 'leaks',
    said: ['leak', 'drip', 'weep', 'seep', 'wet', 'oil on', 'puddle'],
    sheets: ['MS-19'],
  },
  {
    name: 'steers loosely',
    said: ['steering play', 'steering slack', 'wheel slack', 'wheel play', 'slack wheel', 'wander', 'steers loose'],
    sheets: ['MS-21'],
  },
  {
    name: 'does not brake or hold',
    said: ['brake', 'will not stop', 'creeps parked', 'rolls away', 'rolls parked'],
    sheets: ['MS-22'],
  },
  {
    name: 'fumes in the air',
    said: ['fume', 'headache', 'exhaust in', 'exhaust cab'],
    sheets: ['MS-30'],
  },
];

/** The symptoms that a text speaks of, in the list's order. */
export const symptomsIn = (text: string): readonly Symptom[] => symptoms.filter(({ said }) => says(text, said));
