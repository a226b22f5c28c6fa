import { type CellSpec, rowTexts } from '../sheets/read-fields.ts';

export type { CellSpec };

/** Rows of texts; a list is one row. An empty text is a cell nobody has filled. */
export type Cells = readonly (readonly string[])[];

/** Stands for an empty cell between others, so that what comes after it keeps its place. */
const gap = '\u2013';

const isGap = (text: string): boolean => text === gap || text === '-';

const beginsAsNumber = (text: string): boolean => /^[-+]?[.,]?\d/.test(text);

/** A row's texts, with gaps kept as empty cells. What is no number has a cell as well: what comes after it keeps its place. */
const cellsOfRow = (row: string, spec: CellSpec): string[] =>
  row
    .split(/\s*\/\s*(?=[-\u2013]\s*(?:\/|$))|(?<=(?:^|\/)\s*[-\u2013])\s*\/\s*/)
    .flatMap((part) => part.split(/\s\/\s/))
    .map((piece) => piece.trim())
    .flatMap((piece) => {
      if (isGap(piece)) return [''];
      return beginsAsNumber(piece) || piece === '' ? (rowTexts(piece, spec)[0] ?? []) : [piece];
    });

/** A field's text, as its cells. A list is read as one row, however it was typed. */
export function cellsOf(text: string, spec: CellSpec): Cells {
  const rows = text
    .split(/[\n;]+/)
    .filter((row) => row.trim() !== '')
    .map((row) => cellsOfRow(row, spec));
  if (spec.kind === 'rows') return rows;
  return rows.length === 0 ? [] : [rows.flat()];
}

const withoutBlankEnd = (row: readonly string[]): string[] =>
  row.slice(0, row.findLastIndex((text) => text.trim() !== '') + 1);

/** Cells as the field keeps them. A list has no places of its own, so its empty cells close up; others keep a gap. */
export function textOfCells(cells: Cells, spec: CellSpec): string {
  const rows = cells
    .map((row) => (spec.kind === 'list' ? row.filter((text) => text.trim() !== '') : withoutBlankEnd(row)))
    .filter((row) => row.length > 0);
  // A fraction has a stroke of its own, and before a word none is seen, so those between the cells stand apart then.
  const isFraction = (text: string) => text.includes('/') && cellsOfRow(text, spec).length === 1;
  const standsApart = (text: string) => !beginsAsNumber(text.trim()) || isFraction(text);
  const between = rows.flat().some(standsApart) ? ' / ' : '/';
  return rows.map((row) => row.map((text) => (text.trim() === '' ? gap : text.trim())).join(between)).join('\n');
}

/** One cell anew; what lies between it and the others is empty. */
export function withCell(cells: Cells, row: number, column: number, text: string): Cells {
  return withBlock(cells, row, column, [[text]]);
}

/** A block of texts laid over the cells from one of them on, as a spreadsheet pastes. */
export function withBlock(cells: Cells, row: number, column: number, block: Cells): Cells {
  const rows = Math.max(cells.length, row + block.length);
  return Array.from({ length: rows }, (_, at) => {
    const there = cells[at] ?? [];
    const laid = block[at - row];
    if (laid === undefined) return there;
    const length = Math.max(there.length, column + laid.length);
    return Array.from({ length }, (_unused, place) => laid[place - column] ?? there[place] ?? '');
  });
}

/**
 * What was pasted, as cells; null for a single value, which the cell takes itself. From a spreadsheet tabs part the columns,
 * and an empty one among them stays empty.
 */
export function pastedCells(pasted: string, spec: CellSpec): Cells | null {
  const lines = pasted.replace(/\r/g, '').replace(/\n+$/, '').split('\n');
  const rows = lines.map((line) =>
    line.includes('\t') ? line.split('\t').map((text) => text.trim()) : cellsOf(line, spec).flat(),
  );
  const block = spec.kind === 'rows' && !pasted.includes('\t') ? cellsOf(pasted, spec) : rows;
  if (block.flat().length < 2) return null;
  return spec.kind === 'rows' ? block : [block.flat()];
}
