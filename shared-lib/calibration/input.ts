import { z } from 'zod';
import { ImagePoint } from '../model/mark.ts';

/** Nothing on a machine is larger; zod refuses what is not finite. */
const finite = z.number().min(-1_000_000).max(1_000_000);
const PlanePoint = z.strictObject({ x: finite, y: finite });

const common = {
  /** The plane that is calibrated, in the mechanic's words: a mark off it is measured wrongly. */
  plane: z.string().max(200).default(''),
  /** The reference's own tolerance, +/- mm; anything within it is taken as alike. */
  toleranceMm: z.number().nonnegative().default(0),
  /** Standard uncertainty of one click along x and along y, px. */
  clickingPx: z.number().positive().max(100).default(1),
  /**
   * Relative standard uncertainty of a length for what the lens bends. Phones straighten their pictures; 0.1 % is common
   * practice, no source.
   */
  lensShare: z.number().nonnegative().max(0.1).default(0.001),
  /** Size of the upright photo; where it is given, clicks off the photo are refused. */
  photo: z.strictObject({ width: z.number().positive(), height: z.number().positive() }).optional(),
};

/** Ends of a thing of known length. The camera is taken to look square at the plane to within `tiltDegrees`. */
export const KnownLength = z.strictObject({
  method: z.literal('known-length'),
  ends: z.tuple([ImagePoint, ImagePoint]),
  lengthMm: finite,
  tiltDegrees: z.number().nonnegative().max(45).default(10),
  ...common,
});

/** Points on the rim of a circle of known diameter; its tilt is read from the ellipse, as from far away. */
export const KnownCircle = z.strictObject({
  method: z.literal('known-circle'),
  rim: z.array(ImagePoint).max(500),
  diameterMm: finite,
  ...common,
});

/** Four or more points whose places in the plane are known. Takes the perspective out. */
export const KnownPoints = z.strictObject({
  method: z.literal('known-points'),
  points: z.array(z.strictObject({ px: ImagePoint, mm: PlanePoint })).max(500),
  /**
   * Have the points say how the lens bends straight lines; `bendU` is how far it may bend at all (standard uncertainty of
   * `Lens.bend`). Without it, or with fewer than six points, nothing is estimated and `lensShare` alone counts.
   */
  lens: z.strictObject({ bendU: z.number().positive().max(0.5) }).optional(),
  /** The face of the calibration card that these are points of. */
  card: z.enum(['large', 'small']).optional(),
  /** Relative standard uncertainty of all millimetres at once: how true to scale the reference was printed or made. */
  referenceShare: z.number().nonnegative().max(0.1).optional(),
  ...common,
});

export const CalibrationInput = z.discriminatedUnion('method', [KnownLength, KnownCircle, KnownPoints]);
export type CalibrationInput = z.infer<typeof CalibrationInput>;

/** `angle`: three points, the corner in the middle. */
export const MeasuredShape = z.strictObject({
  shape: z.enum(['line', 'span', 'arrow', 'path', 'area', 'angle']),
  points: z.array(ImagePoint).min(2).max(5000),
  /** Standard uncertainty of each point, px; a traced line is surer than a hand. */
  pointPx: z.number().nonnegative().max(100).default(1),
  /** Said by the mechanic: this mark does not lie in the calibrated plane. */
  offPlane: z.boolean().default(false),
});
export type MeasuredShape = z.infer<typeof MeasuredShape>;
