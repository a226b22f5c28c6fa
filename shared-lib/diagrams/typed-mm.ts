import { readQuantity } from '../quantities/read-quantity.ts';

/** A length as typed, in millimetres; null where it is not one. */
export function parseTypedMm(typed: string | undefined): number | null {
  return typed === undefined ? null : readQuantity(typed, 'mm', 'measured').value;
}
