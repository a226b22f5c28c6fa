/** What cautions, named conditions and the critical system ask of a part. A part has its own and those of the parts above it. */
export const componentClasses = [
  'steering',
  'steering-joint',
  'articulation',
  'brakes',
  'service-brake',
  'parking-brake',
  'brake-lining',
  'load-holding',
  'hydraulic-cylinder',
  'lock-valve',
  'chain',
  'fork',
  'hook',
  'outrigger',
  'lift-structure',
  'stability-indicator',
  'protection',
  'rollover-frame',
  'falling-object-guard',
  'belt',
  'guard',
  'interlock',
  'shut-down',
  'stop-control',
  'arm-support',
  'wheel',
  'rim',
  'wheel-stud',
  'track',
  'fuel',
  'fuel-under-pressure',
  'gas-fuel',
  'fuel-high-pressure',
  'hydraulic',
  'hydraulic-line',
  'accumulator',
  'driveline',
  'clutch-lining',
  'electrics',
  'battery',
  'main-cable',
  'starter',
  'charging',
  'gauge',
  'cooling',
  'coolant',
  'radiator',
  'pressure-cap',
  'fan-drive',
  'engine',
  'head',
  'block',
  'engine-internal',
  'hot-exhaust',
  'turbocharger',
  'core-plug',
  'valve-spring',
  'fluid',
  'sign',
] as const;
export type ComponentClass = (typeof componentClasses)[number];

/** How copies of a part are told apart; every index may be left out, which means all of them. */
export type Counting =
  /** Heads, head gaskets and decks. */
  | { readonly by: 'head' }
  /** The machine's own cylinder number, then valves in order from the free end, or rings from the crown. */
  | { readonly by: 'cylinder'; readonly within?: 'intake' | 'exhaust' | 'ring' }
  /** Main bearings and journals in the order of the cylinders; then the upper or lower shell. */
  | { readonly by: 'main'; readonly shells?: true }
  | { readonly by: 'crankpin' }
  | { readonly by: 'number'; readonly most?: number; readonly sections?: true }
  /** Left and right, and the corners where a machine has four of them. */
  | { readonly by: 'side'; readonly corners?: true; readonly numbers?: true }
  /** A hydraulic function word, then a side; `lines` also knows suction, return and their like. */
  | { readonly by: 'function'; readonly lines?: true }
  | { readonly by: 'shell' }
  | { readonly by: 'end' }
  /** A closed list of words; the value is how the word is spoken before the name. */
  | { readonly by: 'word'; readonly words: Readonly<Record<string, string>>; readonly numbers?: true };

/** What a layout must have for a part to exist on it. A layout that does not know keeps the part. */
export type LayoutNeed =
  | 'liquid-cooled'
  | 'liquid-or-oil-cooled'
  | 'liner'
  | 'wet-liner'
  | 'no-wet-liner'
  | 'diesel'
  | 'spark'
  | 'injected'
  | 'gas-fuel';

/** The frame a clock position on the part is spoken in. */
export type ClockFrame = 'deck' | 'fire' | 'up';

/** Where distances on the part are measured from. */
export type DepthDatum = 'deck' | 'flange' | 'crown' | 'pump-end' | 'base-end' | 'rod-eye';

export interface Component {
  readonly code: string;
  /** The trade's plain word, singular, lower case. */
  readonly name: string;
  /** For all of them, where an `s` at the end will not do. */
  readonly plural?: string;
  /** The name behind a function word: `boom hose`, where alone it is a hydraulic hose. */
  readonly withFunction?: string;
  readonly counting?: Counting;
  /** Spoken as part of its cylinder (`cylinder 3, exhaust seat`) instead of by its own number (`liner 3`). */
  readonly ofCylinder?: true;
  /** Counted, but most machines have one: spoken in the singular when no number is given. */
  readonly single?: true;
  /** Its name needs no mention before a part below it. */
  readonly silent?: true;
  /** The word used when another place refers to it. */
  readonly asReference?: string;
  readonly classes?: readonly ComponentClass[];
  /** Classes of the parts above that do not reach down to this one. */
  readonly notClasses?: readonly ComponentClass[];
  readonly needs?: readonly LayoutNeed[];
  /** Only on machines that move: never refused, but not proposed for a stationary engine. */
  readonly mobile?: true;
  readonly clock?: ClockFrame;
  readonly datum?: DepthDatum;
  /** Other words a mechanic may search by. */
  readonly also?: readonly string[];
  readonly parts?: readonly Component[];
}
