/** The typed fields of a sheet as numbers and words; a field that is empty, not understood or impossible gives null. */
export interface ReadInputs<Id extends string = string> {
  number(id: Id): number | null;
  /** The value with all its repeats, as read. */
  repeats(id: Id): readonly number[];
  list(id: Id): readonly number[] | null;
  rows(id: Id): readonly (readonly number[])[] | null;
  /** A choice or a text, trimmed. */
  word(id: Id): string | null;
  /** What a field's number can be off by, where it was typed with ± or its instrument says so. */
  uncertainty(id: Id): number | null;
  /** The place on the machine, as a path; empty where none is named. */
  readonly at: string;
}

/** One field, understood. */
export type FieldValue =
  | {
      readonly kind: 'number';
      readonly value: number;
      readonly repeats: readonly number[];
      readonly off: number | null;
    }
  | { readonly kind: 'list'; readonly values: readonly number[]; readonly off: number | null }
  | { readonly kind: 'rows'; readonly rows: readonly (readonly number[])[]; readonly off: number | null }
  | { readonly kind: 'word'; readonly word: string };

export type Fields = ReadonlyMap<string, FieldValue>;

export const readInputs = (fields: Fields, at: string): ReadInputs => ({
  number: (id) => {
    const field = fields.get(id);
    return field?.kind === 'number' ? field.value : null;
  },
  repeats: (id) => {
    const field = fields.get(id);
    return field?.kind === 'number' ? field.repeats : [];
  },
  list: (id) => {
    const field = fields.get(id);
    return field?.kind === 'list' ? field.values : null;
  },
  rows: (id) => {
    const field = fields.get(id);
    return field?.kind === 'rows' ? field.rows : null;
  },
  word: (id) => {
    const field = fields.get(id);
    return field?.kind === 'word' ? field.word : null;
  },
  uncertainty: (id) => {
    const field = fields.get(id);
    return field === undefined || field.kind === 'word' ? null : field.off;
  },
  at,
});
