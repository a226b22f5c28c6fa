import { measureShape } from '../../../../shared-lib/calibration/measure.ts';
import type { SimulatedPhoto } from './simulated-photos.ts';

/** What a simulated photo belongs to: by how the plane leans, and by how far from the reference something was measured. */
export type PhotoClass = 'small tilt' | 'large tilt' | 'at the reference' | 'far from it';

export interface Held {
  readonly photos: number;
  /** Of 100 photos, how many true lengths lay inside the interval. */
  readonly percent: number;
  /** Error over standard uncertainty, root mean square: 1 where the budget is right. */
  readonly rmsErrors: number;
}

/** How often the stated interval holds the true length: over all photos, and class by class. */
export function heldByClass(
  draw: () => SimulatedPhoto,
  count: number,
): { readonly all: Held; readonly classes: ReadonlyMap<PhotoClass, Held> } {
  const tallies = new Map<PhotoClass | 'all', { photos: number; held: number; squares: number }>();
  for (let i = 0; i < count; i += 1) {
    const { calibration, shape, trueMm, lens, tiltDegrees, mostTiltDegrees, reaches } = draw();
    const { value, u, expanded } = measureShape(calibration, shape);
    const error = value * lens - trueMm;
    const classes = [
      'all',
      tiltDegrees < mostTiltDegrees / 3 ? 'small tilt' : 'large tilt',
      reaches < 1.5 ? 'at the reference' : 'far from it',
    ] as const;
    for (const name of classes) {
      const { photos, held, squares } = tallies.get(name) ?? { photos: 0, held: 0, squares: 0 };
      tallies.set(name, {
        photos: photos + 1,
        held: held + (Math.abs(error) <= (expanded ?? 0) ? 1 : 0),
        squares: squares + (error / (u ?? Number.NaN)) ** 2,
      });
    }
  }
  const told = new Map(
    [...tallies].map(([name, { photos, held, squares }]): [PhotoClass | 'all', Held] => [
      name,
      { photos, percent: (100 * held) / photos, rmsErrors: Math.sqrt(squares / photos) },
    ]),
  );
  const all = told.get('all') ?? { photos: 0, percent: Number.NaN, rmsErrors: Number.NaN };
  const classes = new Map([...told].filter((entry): entry is [PhotoClass, Held] => entry[0] !== 'all'));
  return { all, classes };
}
