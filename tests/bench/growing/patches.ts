import {
  type DrawnPatch,
  drawPatch,
  type PatchKind,
  type Pits,
} from '../../reference/shared-lib/growing/drawn-patch.ts';

export interface Row {
  readonly name: string;
  readonly kind: PatchKind;
  readonly strength: number;
  readonly pits?: Pits;
}

const pitRow = (form: Pits['form'], acrossPx: number, share: number, dulled = 8): Row => ({
  name: `pitted, ${form} ${acrossPx} px, ${100 * share} %${dulled === 8 ? '' : `, ${dulled} between`}`,
  kind: 'pitted',
  strength: 1,
  pits: { form, acrossPx, share, dulled },
});

export const rows: readonly Row[] = [
  ...(
    [
      ['rusty', 1],
      ['rusty', 0.25],
      ['scaled', 1],
      ['scaled', 0.25],
      ['scuffed', 1],
      ['scuffed', 0.5],
      ['pitted', 1],
      ['pitted', 0.7],
    ] as const
  ).map(([kind, strength]) => ({ name: `${kind}, strength ${strength}`, kind, strength })),
  { name: 'bare', kind: 'scuffed', strength: 0 },
  pitRow('ragged', 2, 0.24),
  pitRow('ragged', 6, 0.24),
  pitRow('ragged', 3, 0.12),
  pitRow('ragged', 4.4, 0.4),
  pitRow('ragged', 4.4, 0.24, 0),
  pitRow('round', 3, 0.1),
  pitRow('round', 4, 0.2),
  pitRow('round', 6, 0.15),
  pitRow('round', 6, 0.4),
  pitRow('round', 5, 0.2, 0),
];

/** Radii spread evenly; a patch that comes near the picture's edge is left out. */
export function* patchesOf({ kind, strength, pits }: Row, seed: number, wanted: number): Generator<DrawnPatch> {
  for (let made = 0, tried = 0; made < wanted && tried < 4 * wanted; tried += 1) {
    const radius = 30 + (80 * made) / Math.max(1, wanted - 1);
    const patch = drawPatch(kind, 1000 * seed + tried, radius, strength, pits);
    const { width, height } = patch.size;
    if (patch.truth.some(({ x, y }) => x < 8 || y < 8 || x > width - 9 || y > height - 9)) continue;
    made += 1;
    yield patch;
  }
}
