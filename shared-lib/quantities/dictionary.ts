/** Which way of a quantity is bad; a trend and a comparison need to know. */
export type BadWay = 'higher' | 'lower' | 'either' | 'neither';

/** How far a value can be off when nothing better is known: in the quantity's own unit, or as a share of the value. */
export type Fallback = { readonly absolute: number; readonly fromPhoto?: number } | { readonly share: number };

export interface QuantityKind {
  readonly id: string;
  readonly label: string;
  /** Empty where there is none (a count, a word). */
  readonly unit: string;
  /** A second unit for the same question where the part decides: an angle at the wheel, a distance at the pin. */
  readonly otherUnit?: string;
  readonly otherFallback?: Fallback;
  /** A question without a fixed unit: a gauge's shown value may be volts or degrees. */
  readonly anyUnit?: true;
  /** A difference: degrees Fahrenheit carry no offset. */
  readonly difference?: true;
  /** Outside it the bench asks 'sure?' and takes the answer. Null for words. */
  readonly range: { readonly least: number; readonly most: number } | null;
  readonly bad: BadWay;
  readonly fallback: Fallback | null;
  /** Answers offered where the quantity is a word. */
  readonly answers?: readonly string[];
}

/**
 * Every quantity a finding can carry.
 * Fallback uncertainties and bad directions: the handbook's quantity dictionary, common practice, no source. Where that has
 * no figure the fallback is null: nothing is claimed.
 */
const dictionary = {
  length: kind('Length', 'mm', [0, 20_000], 'higher', { absolute: 0.5, fromPhoto: 1 }),
  width: kind('Width', 'mm', [0, 5_000], 'higher', { absolute: 0.2 }),
  depth: kind('Depth', 'mm', [0, 500], 'higher', { absolute: 0.1 }),
  opening: kind('Opening', 'mm', [0, 100], 'higher', { absolute: 0.2 }),
  longest: kind('Longest crack', 'mm', [0, 2_000], 'higher', { absolute: 0.5, fromPhoto: 1 }),
  spacing: kind('Spacing', 'mm', [0, 1_000], 'neither', { absolute: 0.5, fromPhoto: 1 }),
  diameter: kind('Largest diameter', 'mm', [0, 500], 'higher', { absolute: 0.2 }),
  hole: kind('Hole', 'mm', [0, 100], 'higher', { absolute: 0.2 }),
  area: kind('Area', 'mm²', [0, 10_000_000], 'higher', { share: 0.1 }),
  coverage: kind('Coverage', '%', [0, 100], 'higher', { absolute: 5 }),
  density: kind('Count per square centimetre', '', [0, 10_000], 'higher', null),
  count: kind('Count', '', [0, 10_000], 'higher', { absolute: 0 }),
  branches: kind('Branches', '', [0, 100], 'higher', { absolute: 0 }),
  pieces: kind('Pieces', '', [1, 1_000], 'higher', { absolute: 0 }),
  blisters: kind('Blisters', '', [0, 1_000], 'higher', { absolute: 0 }),
  turns: kind('Turns lost', '', [0, 100], 'higher', null),
  wall: kind('Wall left', 'mm', [0, 200], 'lower', { absolute: 0.1 }),
  thickness: kind('Thickness', 'mm', [0, 200], 'higher', { absolute: 0.1 }),
  loss: kind('Loss of section', '%', [0, 100], 'higher', null),
  size: kind('Size', 'mm', [0, 20_000], 'either', { absolute: 0.01 }),
  wear: kind('Wear', 'mm', [0, 100], 'higher', { absolute: 0.01 }),
  ofLimit: kind('Share of the limit', '%', [0, 1_000], 'higher', null),
  elongation: kind('Elongation', '%', [0, 50], 'higher', { absolute: 0.2 }),
  step: kind('Step', 'mm', [0, 20], 'higher', { absolute: 0.01 }),
  flatness: kind('Out of flat, overall', 'mm', [0, 20], 'higher', { absolute: 0.03 }),
  flatnessLocal: kind('Out of flat in 150 mm', 'mm', [0, 20], 'higher', { absolute: 0.03 }),
  protrusion: kind('Protrusion', 'mm', [-5, 5], 'either', { absolute: 0.01 }),
  recession: kind('Recession', 'mm', [0, 20], 'higher', { absolute: 0.05 }),
  tilt: kind('Tilt', 'mm', [0, 5], 'higher', { absolute: 0.01 }),
  gap: kind('Gap', 'mm', [0, 500], 'either', { absolute: 0.02 }),
  clearance: kind('Clearance', 'mm', [0, 500], 'either', { absolute: 0.02 }),
  offset: kind('Out of line', 'mm', [0, 2_000], 'higher', { absolute: 0.5, fromPhoto: 1 }),
  over: kind('Over a length of', 'mm', [0, 20_000], 'neither', { absolute: 0.5, fromPhoto: 1 }),
  angle: kind('Angle', '°', [0, 360], 'higher', { absolute: 1 }),
  arc: kind('Missing arc', '°', [0, 360], 'higher', null),
  stretch: kind('Bolt stretch', 'mm', [0, 20], 'higher', { absolute: 0.01 }),
  play: {
    ...kind('Play', '°', [0, 180], 'higher', { absolute: 1 }),
    otherUnit: 'mm',
    otherFallback: { absolute: 0.2 },
  },
  radius: kind('At a radius of', 'mm', [0, 5_000], 'neither', { absolute: 0.5 }),
  reach: kind('Reach', 'mm', [0, 20_000], 'either', null),
  torque: kind('Torque found', 'N·m', [0, 10_000], 'lower', { share: 0.05 }),
  breakaway: kind('Torque to free it', 'N·m', [0, 10_000], 'higher', { share: 0.05 }),
  drop: kind('Voltage drop', 'V', [0, 100], 'higher', { absolute: 0.01 }),
  resistance: kind('Resistance', 'mΩ', [0, 1_000_000], 'higher', null),
  voltage: kind('Voltage', 'V', [0, 100], 'lower', { absolute: 0.02 }),
  current: kind('Current', 'A', [0, 5_000], 'either', { share: 0.02 }),
  pressure: kind('Pressure', 'kPa', [0, 300_000], 'lower', { share: 0.02 }),
  pressureLoss: kind('Pressure difference', 'kPa', [0, 10_000], 'higher', { absolute: 2 }),
  temperature: kind('Temperature', '°C', [-60, 1_200], 'higher', { absolute: 2 }),
  temperatureDifference: {
    ...kind('Temperature difference', '°C', [0, 500], 'higher', { absolute: 2 }),
    difference: true,
  },
  freeze: kind('Freezes at', '°C', [-80, 20], 'higher', { absolute: 2 }),
  glycol: kind('Glycol', '%', [0, 100], 'either', { absolute: 3 }),
  pH: kind('pH', '', [0, 14], 'either', { absolute: 0.3 }),
  inhibitor: kind('Inhibitor strip', '', [0, 100], 'lower', null),
  water: kind('Water', '%', [0, 100], 'higher', null),
  mixed: kind('Share of the other fluid', '%', [0, 100], 'higher', null),
  levelChange: kind('Level change', 'mL/h', [-100_000, 100_000], 'either', { share: 0.2 }),
  volume: kind('Volume', 'mL', [0, 1_000_000], 'higher', { share: 0.1 }),
  leak: kind('Leak rate', 'mL/min', [0, 100_000], 'higher', { share: 0.1 }),
  drops: kind('Drops', 'drops/min', [0, 1_000], 'higher', { absolute: 1 }),
  class: { ...kind('Class of leak', '', [1, 3], 'higher', null), answers: ['I', 'II', 'III'] },
  bubbles: kind('Bubbles per minute', '', [0, 10_000], 'higher', null),
  timeToColour: kind('Time to colour', 's', [0, 3_600], 'lower', null),
  flow: kind('Flow', 'L/min', [0, 5_000], 'lower', { share: 0.02 }),
  blocked: kind('Blocked', '%', [0, 100], 'higher', null),
  filled: kind('Groove filled', '%', [0, 100], 'higher', null),
  drift: kind('Drift', 'mm per 10 min', [0, 10_000], 'higher', { absolute: 1 }),
  deceleration: kind('Deceleration', 'm/s²', [0, 20], 'lower', { absolute: 0.2 }),
  creep: kind('Creep', 'mm', [0, 100_000], 'higher', { absolute: 5 }),
  slope: kind('Slope', '%', [0, 200], 'neither', null),
  time: kind('Time', 'min', [0, 100_000], 'neither', null),
  output: kind('Output against what is required', '%', [0, 1_000], 'lower', null),
  value: { ...kind('Value found', '', [-1e9, 1e9], 'either', null), anyUnit: true },
  required: { ...kind('Value required', '', [-1e9, 1e9], 'neither', null), anyUnit: true },
  shown: { ...kind('Shown', '', [-1e9, 1e9], 'neither', null), anyUnit: true },
  true: { ...kind('True', '', [-1e9, 1e9], 'neither', null), anyUnit: true },
  error: { ...kind('Error', '', [-1e9, 1e9], 'either', null), anyUnit: true },
  rpm: kind('At', 'rpm', [0, 20_000], 'neither', { absolute: 10 }),
  age: kind('Age', 'years', [0, 100], 'higher', { absolute: 1 }),
  through: word('Goes through', ['yes', 'no', 'unknown']),
  recovered: word('Piece found', ['yes', 'no']),
  allFound: word('All pieces found', ['yes', 'no']),
  transferred: word('Metal transferred', ['yes', 'no']),
  freed: word('Freed', ['yes', 'no']),
  hatch: word('Cross-hatch visible', ['yes', 'in part', 'no']),
  rotated: word('Turned on the hose', ['yes', 'no']),
  layer: word('Layer reached', ['cover', 'reinforcement', 'inner tube', 'conductor']),
  colour: word('Colour', ['straw', 'brown', 'blue', 'grey', 'black']),
  hardness: word('Hardness, if taken', []),
  fluid: word('Fluid', [
    'engine oil',
    'hydraulic oil',
    'coolant',
    'fuel',
    'brake fluid',
    'grease',
    'water',
    'not known',
  ]),
  with: word('Mixed with', ['coolant', 'engine oil', 'hydraulic oil', 'fuel', 'water', 'not known']),
  particles: word('Particles', ['dust', 'water', 'bright metal', 'bronze', 'rubber', 'fibre', 'not known']),
  magnet: word('Sticks to a magnet', ['yes', 'no', 'in part']),
  cleanliness: word('Cleanliness code from a laboratory', []),
  testResult: word('Test result', ['shown', 'not found by this test']),
  label: word('What the can or label says', []),
  dateCode: word('Date code', []),
  found: word('What was found', []),
  right: word('What belongs there', []),
  grade: word('Grade mark', []),
  marksShifted: word('Paint mark shifted', ['yes', 'no', 'no mark']),
  how: word('How', []),
  normally: word('What it does normally', []),
  since: word('Since when', []),
  when: word('When', []),
  loudest: word('Loudest at', []),
  ruleUsed: word('Load used', []),
} as const satisfies Record<string, Omit<QuantityKind, 'id'>>;

export type QuantityId = keyof typeof dictionary;

/** The kind of an id; unknown ids (of older records or imported files) have none. */
export function quantityKind(id: string): QuantityKind | null {
  return Object.hasOwn(dictionary, id) ? { id, ...dictionary[id as QuantityId] } : null;
}

export const quantityIds = Object.keys(dictionary) as readonly QuantityId[];

function kind(
  label: string,
  unit: string,
  [least, most]: readonly [number, number],
  bad: BadWay,
  fallback: Fallback | null,
): Omit<QuantityKind, 'id'> {
  return { label, unit, range: { least, most }, bad, fallback };
}

function word(label: string, answers: readonly string[]): Omit<QuantityKind, 'id'> {
  return { label, unit: '', range: null, bad: 'neither', fallback: null, answers };
}
