import type { CellSpec, Cells } from '../../shared-lib/readings/cells.ts';
import { capital } from '../ui/words.ts';

export interface Place {
  readonly row: number;
  readonly column: number;
}

export interface Size {
  readonly rows: number;
  readonly columns: number;
}

/** Empty cells that wait, so that a sheet nobody has begun shows what it is for. */
const fewest = { list: 4, columns: 3, rows: 2 } as const;

/** More are quicker seen, and drawn, as the text they were pasted as. */
export const mostCells = 300;

/** How many cells stand there: all that are filled, and the next. */
export function sizeOf(spec: CellSpec, cells: Cells, cylinders: number): Size {
  const widest = Math.max(0, ...cells.map((row) => row.length));
  switch (spec.kind) {
    case 'per-cylinder':
      return { rows: 1, columns: Math.max(cylinders, widest) };
    case 'list':
      return { rows: 1, columns: Math.max(fewest.list, widest + 1) };
    case 'rows':
      return {
        rows: Math.max(fewest.rows, cells.length + 1),
        columns: Math.max(spec.columns ?? Math.max(fewest.columns, widest + 1), widest),
      };
  }
}

interface NextAsked {
  readonly spec: CellSpec;
  readonly size: Size;
  readonly place: Place;
  readonly isEmpty: boolean;
  /** How many numbers were typed into the one cell. */
  readonly several: number;
}

/** Where Enter goes; null: out of the field. An empty cell ends a list, a row, and at a row's beginning the table. */
export function nextCell({ spec, size, place, isEmpty, several }: NextAsked): Place | null {
  const { row, column } = place;
  if (spec.kind !== 'rows') {
    // A cylinder that has no reading is passed over; a list ends at its first empty cell.
    const isOver = several > 1 || (isEmpty && (spec.kind === 'list' || column === 0)) || column + 1 >= size.columns;
    return isOver ? null : { row, column: column + 1 };
  }
  if (isEmpty && column === 0) return null;
  const isRowOver = several > 1 || isEmpty || column + 1 >= size.columns;
  return isRowOver ? { row: row + 1, column: 0 } : { row, column: column + 1 };
}

/** Said before `, thrust first` and the like. */
const short = (words: string): string => words.split(',')[0] ?? words;

/** Names over the columns, where each means something of its own. */
export function columnHeads(spec: CellSpec, columns: number): readonly string[] {
  if (spec.kind !== 'rows' || spec.columnNames === undefined) return [];
  return Array.from({ length: columns }, (_, at) => spec.columnNames?.[at] ?? String(at + 1));
}

/** What a reader that speaks the screen says of a cell. */
export function cellName(spec: CellSpec, { row, column }: Place): string {
  switch (spec.kind) {
    case 'list':
      return `${spec.label}, ${column + 1}`;
    case 'per-cylinder':
      return `${spec.label}, cylinder ${column + 1}`;
    case 'rows': {
      const name = spec.columnNames?.[column] ?? `${short(spec.column)} ${column + 1}`;
      return `${capital(short(spec.row))} ${row + 1}, ${name}`;
    }
  }
}
