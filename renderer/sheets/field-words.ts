import { readNumber } from '../../shared-lib/quantities/read-number.ts';
import { showValue } from '../../shared-lib/quantities/show-quantity.ts';
import type { UnitSystem } from '../../shared-lib/quantities/units.ts';
import type { InputSpec } from '../../shared-lib/sheets/sheet-kind.ts';
import { countWords } from '../ui/words.ts';

/** What is typed and what is usual, in the shop's units: `usually 120 to 320 mm`. */
export function rangeWords(spec: InputSpec, system: UnitSystem): string {
  switch (spec.kind) {
    case 'choice':
    case 'text':
      return '';
    default: {
      const [least, most] = spec.usual ?? spec.possible;
      const show = (value: number) => showValue(value, spec.unit, null, system);
      const bare = (shown: string) => /^[\u2212\d.\u202f]*\d/u.exec(shown)?.[0] ?? shown;
      const between = `${spec.usual === undefined ? '' : 'usually '}${bare(show(least))} to ${show(most)}`;
      return [howWords(spec), between].filter((words) => words !== '').join('; ');
    }
  }
}

function howWords(spec: Exclude<InputSpec, { kind: 'choice' | 'text' }>): string {
  switch (spec.kind) {
    case 'number':
      return spec.repeats === undefined ? '' : `several readings with / between: the ${spec.repeats} counts`;
    case 'list':
      return 'one a cell, or a list with / between';
    case 'per-cylinder':
      return 'one for each cylinder';
    case 'rows':
      return `a line for each ${spec.row}, across it each ${spec.column}; or paste a table`;
  }
}

const numbersOf = (text: string): readonly number[] =>
  text
    .split(/[/;\n\t]+|\s{2,}|,\s/)
    .flatMap((part) => part.trim().split(/\s+(?=[-\d.,])/))
    .flatMap((part) => readNumber(part)?.value ?? []);

/** What a list has so far, as one types it: how many, lowest and highest. */
export function tallyWords(spec: InputSpec, text: string, cylinders: number): string {
  if (spec.kind === 'choice' || spec.kind === 'text' || text.trim() === '') return '';
  const numbers = numbersOf(text);
  if (spec.kind === 'number' && (spec.repeats === undefined || numbers.length < 2)) return '';
  if (numbers.length === 0) return '';
  const span = `lowest ${Math.min(...numbers)}, highest ${Math.max(...numbers)}`;
  if (spec.kind === 'per-cylinder') return `${numbers.length} of ${countWords(cylinders, 'cylinder')}; ${span}`;
  if (spec.kind === 'rows') {
    const rows = text.split(/[\n;]+/).filter((row) => row.trim() !== '').length;
    return `${countWords(rows, 'line')}, ${countWords(numbers.length, 'reading')}; ${span}`;
  }
  return `${countWords(numbers.length, 'reading')}; ${span}`;
}
