import { readNumber } from '../quantities/read-number.ts';
import { convertDifference, unitNamed } from '../quantities/units.ts';
import type { FieldValue } from './read-inputs.ts';
import type { InputSpec } from './sheet-kind.ts';

/** A field without a ± of its own can be off by its instrument's resolution, where the two measure the same thing. */
export function applyInstrument(
  field: FieldValue,
  spec: InputSpec,
  instrument: { readonly resolution: string } | null,
): FieldValue {
  if (instrument === null || field.kind === 'word' || field.off !== null || !('unit' in spec)) return field;
  const read = readNumber(instrument.resolution);
  if (read === null) return field;
  const [from, to] = [unitNamed(read.unitText), unitNamed(spec.unit)];
  const off = from === null || to === null ? null : convertDifference(read.value, from, to);
  return off === null ? field : { ...field, off };
}
