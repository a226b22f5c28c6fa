import { unitFor } from '../quantities/show-quantity.ts';
import type { UnitSystem } from '../quantities/units.ts';
import type { InputSpec } from '../sheets/sheet-kind.ts';

/** The unit a field is shown with. */
export const fieldUnit = (spec: InputSpec, system: UnitSystem): string =>
  'unit' in spec ? unitFor(spec.unit, system) : '';

const saysUnit = (text: string): boolean => /[\p{L}°%"″”'′²µΩ]/u.test(text);

/**
 * A field's text with the unit that stood beside it, where that is not the sheet's own: a bare `15` of a shop that works in
 * psi must never be read as kilopascals. What names its unit, and words, stay as typed.
 */
export function withFieldUnit(text: string, spec: InputSpec, system: UnitSystem): string {
  if (!('unit' in spec)) return text;
  const unit = fieldUnit(spec, system);
  if (unit === spec.unit || unit === '') return text;
  return text
    .split('\n')
    .map((row) =>
      row.trim() === '' || saysUnit(row) ? row : row.replace(/[^\n;]*[^\n;\s]/g, (part) => `${part} ${unit}`),
    )
    .join('\n');
}

/** Whether the text itself says a unit, so that the one beside the field would only repeat it. */
export const namesUnit = (text: string): boolean => saysUnit(text);
