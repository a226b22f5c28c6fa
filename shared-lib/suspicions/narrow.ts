import { worstVerdict } from '../verdict/worst.ts';
import type { EvidenceSource } from './sources.ts';
import type { SuspicionTable } from './table.ts';

/** Which lines of the table are looked at. */
export const lineKinds = ['all', 'not-held', 'turned', 'reading', 'finding', 'observation'] as const;
export type LineKind = (typeof lineKinds)[number];

export interface Narrowing {
  readonly kind: LineKind;
  /** Beginnings of words, in any order; all have to stand in the line. */
  readonly words: string;
  /** Only what bears on this suspicion; null for any. */
  readonly bearsOn: string | null;
}

export const wholeTable: Narrowing = { kind: 'all', words: '', bearsOn: null };

const wordsOf = (text: string): readonly string[] => text.toLowerCase().match(/[\p{L}\d]+/gu) ?? [];

const cellsOf = ({ columns }: SuspicionTable, id: string) =>
  columns.flatMap(({ suspicion, cells }) => {
    const cell = cells.get(id);
    return cell === undefined ? [] : [{ suspicionId: suspicion.id, cell }];
  });

/** All that can be read in a line: what it is, how it came out, and the reasons in its cells. */
function textOf(source: EvidenceSource, table: SuspicionTable): string {
  const verdict = source.kind === 'reading' ? worstVerdict(source.reading.results.map((line) => line.verdict)) : '';
  const number = source.kind === 'reading' ? '' : `${source.finding.number}`;
  const reasons = cellsOf(table, source.id).flatMap(({ cell: { bears, because, limit } }) => [bears, because, limit]);
  return [source.title, verdict, number, ...reasons].join(' ');
}

function isOfKind(source: EvidenceSource, kind: LineKind, table: SuspicionTable): boolean {
  switch (kind) {
    case 'all':
      return true;
    case 'not-held':
      return cellsOf(table, source.id).length === 0;
    case 'turned':
      return cellsOf(table, source.id).some(({ cell }) => cell.earlier.some(({ bears }) => bears !== cell.bears));
    case 'reading':
    case 'finding':
    case 'observation':
      return source.kind === kind;
  }
}

/** The lines that are asked for, in the table's order. */
export function narrowed(table: SuspicionTable, { kind, words, bearsOn }: Narrowing): readonly EvidenceSource[] {
  const asked = wordsOf(words);
  return table.sources.filter((source) => {
    if (!isOfKind(source, kind, table)) return false;
    if (bearsOn !== null && !cellsOf(table, source.id).some(({ suspicionId }) => suspicionId === bearsOn)) return false;
    if (asked.length === 0) return true;
    const there = wordsOf(textOf(source, table));
    return asked.every((word) => there.some((each) => each.startsWith(word)));
  });
}

/** How many lines there are of each kind. */
export const countOfKind = (table: SuspicionTable, kind: LineKind): number =>
  table.sources.filter((source) => isOfKind(source, kind, table)).length;
