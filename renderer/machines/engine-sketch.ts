import type { Layout } from '../../shared-lib/model/layout.ts';
import { cylinderPlaces } from '../../shared-lib/parts/cylinder-places.ts';

export interface SketchedBore {
  readonly row: number;
  readonly column: number;
  /** Null where the maker's list does not say yet. */
  readonly number: number | null;
}

export interface EngineBores {
  readonly bores: readonly SketchedBore[];
  readonly rows: number;
  readonly columns: number;
}

const rowOfBank = { L: 1, R: 0, A: 0, B: 1 } as const;

/**
 * Bores as they lie on the deck seen from above, free end at the left. Of an engine with two banks only the maker's list
 * says which number stands where, so without it the bores carry none.
 */
export function sketchBores(layout: Layout): EngineBores {
  const { cylinders, arrangement } = layout.engine;
  if (arrangement === 'inline') {
    const places = cylinderPlaces(layout);
    const isKnown = layout.numbering.scheme !== 'list' || (layout.numbering.list ?? []).length > 0;
    const bores = Array.from({ length: cylinders }, (_, column) => ({
      row: 0,
      column,
      number: isKnown ? (places.find(({ fromFreeEnd }) => fromFreeEnd === column + 1)?.number ?? null) : null,
    }));
    return { bores, rows: 1, columns: cylinders };
  }
  const columns = Math.ceil(cylinders / 2);
  const listed = layout.numbering.scheme === 'list' ? (layout.numbering.list ?? []) : [];
  const bores = Array.from({ length: cylinders }, (_, index) => {
    const row = index % 2;
    const column = Math.floor(index / 2);
    const entry = listed.find(
      ({ bank, fromFreeEnd }) => bank !== undefined && rowOfBank[bank] === row && fromFreeEnd === column + 1,
    );
    return { row, column, number: entry?.number ?? null };
  });
  return { bores, rows: 2, columns };
}
