import type { Reading } from '../model/reading.ts';
import { sheetOf } from '../sheets/index.ts';
import type { Sheet } from '../sheets/sheet-kind.ts';

/** How a result's text is to be read for people. */
export interface ResultKind {
  /** Ours, not typed: it is worth as many digits as its uncertainty says, and no fewer. */
  readonly isComputed: boolean;
  /** Degrees of a difference carry no offset: 15 °C are 27 °F, not 59. */
  readonly isDifference: boolean;
}

export const typedResult: ResultKind = { isComputed: false, isDifference: false };

/** `charge 2` is the second of the results called `charge`. */
export function isDifference(sheet: Sheet | null, of: string): boolean {
  const specs = Object.entries(sheet?.results ?? {});
  return specs.some(([name, spec]) => (name === of || of.startsWith(`${name} `)) && spec.difference === true);
}

export function resultKindOf(reading: Pick<Reading, 'sheet' | 'sheetVersion'>, of: string): ResultKind {
  return { isComputed: reading.sheetVersion > 0, isDifference: isDifference(sheetOf(reading.sheet), of) };
}
