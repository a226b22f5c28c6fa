import type { InputSpec, Sheet } from '../../shared-lib/sheets/sheet-kind.ts';

/** One field of a sheet on the screen. */
export interface SheetField {
  readonly id: string;
  readonly spec: InputSpec;
  readonly kept: 'inputs' | 'conditions';
}

/** In the order of the machine: what is read first, then what it was read under. */
export function fieldsOf(sheet: Sheet): readonly SheetField[] {
  const fields = (kept: SheetField['kept']): SheetField[] =>
    Object.entries(sheet[kept]).map(([id, spec]) => ({ id, spec, kept }));
  return [...fields('inputs'), ...fields('conditions').filter(({ id }) => !Object.hasOwn(sheet.inputs, id))];
}
