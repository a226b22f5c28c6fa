import type { Fields, FieldValue } from './read-inputs.ts';
import type { Computed, ComputedLine } from './sheet-kind.ts';

export interface Propagated {
  /** Half-width of the line's value, in its unit; a list has one for its widest element. */
  readonly off: number;
  /** Ids of the fields that move the line and say what they can be off by. */
  readonly by: readonly string[];
  /** Every field that moves the line says so; then nothing needs a fallback. */
  readonly complete: boolean;
}

/** Longer lists are one gauge's work over a surface; their sheets say themselves what they can be off by. */
const longestList = 64;

/**
 * What the typed ± of the fields does to each line: the law of propagation, first order, by moving one number at a time.
 *
 * @returns one entry for each line, in order; null where no field that moves it says what it can be off by
 * Source: JCGM 100 (GUM), 5.1.2, uncorrelated inputs.
 */
export function propagate(
  fields: Fields,
  lines: readonly ComputedLine[],
  compute: (fields: Fields) => Computed,
): readonly (Propagated | null)[] {
  const withOff = [...fields].filter(([, field]) => offOf(field) > 0);
  if (withOff.length === 0) return lines.map(() => null);
  const squares = lines.map(() => 0);
  const by = lines.map(() => new Set<string>());
  const complete = lines.map(() => true);
  for (const [id, field] of fields) {
    const off = offOf(field);
    const says = field.kind !== 'word' && field.off !== null;
    for (const move of moves(field, off > 0 ? off : step(field))) {
      const up = compute(new Map([...fields, [id, move(1)]])).lines;
      const down = compute(new Map([...fields, [id, move(-1)]])).lines;
      for (const [index, line] of lines.entries()) {
        const change = halfChange(line, up, down);
        if (change === 0) continue;
        if (off > 0) {
          squares[index] = (squares[index] ?? 0) + change ** 2;
          by[index]?.add(id);
        }
        if (!says) complete[index] = false;
      }
    }
  }
  return lines.map((_, index) => {
    const names = [...(by[index] ?? [])];
    if (names.length === 0) return null;
    return { off: Math.sqrt(squares[index] ?? 0), by: names, complete: complete[index] ?? false };
  });
}

/** What a field can be off by: what was said, and never less than half the spread of its repeats. */
function offOf(field: FieldValue): number {
  if (field.kind === 'word') return 0;
  const spread =
    field.kind === 'number' && field.repeats.length > 1
      ? (Math.max(...field.repeats) - Math.min(...field.repeats)) / 2
      : 0;
  return Math.max(field.off ?? 0, spread);
}

/** A small move that only asks whether the line depends on the field at all. */
function step(field: FieldValue): number {
  const size = field.kind === 'number' ? Math.abs(field.value) : 1;
  return 1e-4 * Math.max(size, 1e-3);
}

function moves(field: FieldValue, off: number): readonly ((way: 1 | -1) => FieldValue)[] {
  if (field.kind === 'number') {
    return [
      (way) => {
        const value = field.value + way * off;
        return { ...field, value, repeats: field.repeats.map((each) => each + way * off) };
      },
    ];
  }
  if (field.kind === 'list' && field.values.length <= longestList) {
    return field.values.map((_, at) => (way) => ({
      ...field,
      values: field.values.map((each, index) => (index === at ? each + way * off : each)),
    }));
  }
  if (field.kind === 'rows' && field.rows.flat().length <= longestList) {
    return field.rows.flatMap((row, at) =>
      row.map(
        (_, column) =>
          (way: 1 | -1): FieldValue => ({
            ...field,
            rows: field.rows.map((each, index) =>
              index === at ? each.map((value, place) => (place === column ? value + way * off : value)) : each,
            ),
          }),
      ),
    );
  }
  return [];
}

function halfChange(line: ComputedLine, up: readonly ComputedLine[], down: readonly ComputedLine[]): number {
  const same = (other: ComputedLine) => other.of === line.of && other.which === line.which;
  const [above, below] = [up.find(same)?.value, down.find(same)?.value];
  if (above === undefined || below === undefined) return 0;
  const [ups, downs] = [[above].flat(), [below].flat()];
  return Math.max(0, ...ups.map((each, index) => Math.abs(each - (downs[index] ?? each)) / 2));
}
