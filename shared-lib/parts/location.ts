/** The marks an index may be, beside numbers and lower-case words. */
export const placeMarks = ['L', 'R', 'FL', 'FR', 'RL', 'RR', 'A', 'B', 'I', 'E', 'U', 'LO'] as const;
export type PlaceMark = (typeof placeMarks)[number];

export const sides = ['THR', 'MIN', 'FRONT', 'REAR', 'INT', 'EXH', 'L', 'R', 'TOP', 'BOT', 'IN', 'OUT'] as const;
export type Side = (typeof sides)[number];
export const zones = ['ABOVE', 'TRR', 'UP', 'MID', 'LOW', 'BELOW', 'SEAL'] as const;
export type Zone = (typeof zones)[number];
export const ends = ['A', 'B'] as const;
export type End = (typeof ends)[number];
export const faces = ['FIRE', 'DECK', 'OUT', 'IN'] as const;
export type Face = (typeof faces)[number];
export const views = ['ABOVE', 'BELOW', 'FRONT', 'REAR', 'L', 'R'] as const;
export type View = (typeof views)[number];

/** A number counts copies; a word names a function (boom, upper); a mark is one of `placeMarks`. */
export type LocationIndex = number | string;

export interface LocationNode {
  readonly code: string;
  readonly indices: readonly LocationIndex[];
}

/** A path, or a reference relative to the nearest parent that has such a part. */
export type LocationPath = readonly LocationNode[];

/** Hours of the deck clock; a range runs clockwise from `fromHour` and may pass twelve. */
export interface ClockRange {
  readonly fromHour: number;
  readonly toHour: number;
}

export interface DepthRange {
  readonly fromMm: number;
  readonly toMm: number;
}

export interface Qualifiers {
  readonly from?: LocationPath;
  readonly to?: LocationPath;
  readonly between?: readonly [LocationPath, LocationPath];
  readonly near?: { readonly part: LocationPath; readonly mm: number | null };
  readonly side?: Side;
  readonly face?: Face;
  readonly end?: End;
  readonly view?: View;
  readonly clock?: ClockRange;
  readonly depth?: DepthRange;
  readonly zone?: Zone;
}

/** A place on a machine, parsed. Whether it exists on a layout is `checkLocation`'s question. */
export interface Location {
  readonly path: LocationPath;
  readonly qualifiers: Qualifiers;
}
