/** EXIF orientation, 1 to 8: how the stored rows and columns have to be turned to stand upright. */
export interface Size {
  readonly width: number;
  readonly height: number;
}
export interface Rectangle extends Size {
  readonly x: number;
  readonly y: number;
}

/** A mirroring left to right of the stored picture, followed by a clockwise turn. */
export interface Turn {
  readonly mirrored: boolean;
  readonly clockwise: 0 | 90 | 180 | 270;
}

/** Source: Exif 3.0 (CIPA DC-008), tag 0x0112; each value names where the stored row 0 and column 0 belong. */
const turns: readonly Turn[] = [
  { mirrored: false, clockwise: 0 },
  { mirrored: true, clockwise: 0 },
  { mirrored: false, clockwise: 180 },
  { mirrored: true, clockwise: 180 },
  { mirrored: true, clockwise: 270 },
  { mirrored: false, clockwise: 90 },
  { mirrored: true, clockwise: 90 },
  { mirrored: false, clockwise: 270 },
];

/** What a file says, where it is sense; a value outside 1 to 8 says nothing. */
export const orientationOf = (stated: unknown): number =>
  typeof stated === 'number' && Number.isInteger(stated) && stated >= 1 && stated <= 8 ? stated : 1;

export const turnOf = (orientation: number): Turn => turns[orientation - 1] ?? { mirrored: false, clockwise: 0 };

export const uprightSize = ({ width, height }: Size, orientation: number): Size =>
  orientation >= 5 ? { width: height, height: width } : { width, height };
