import type { QuantityKind } from '../quantities/dictionary.ts';
import { readNumber } from '../quantities/read-number.ts';
import { readQuantity } from '../quantities/read-quantity.ts';
import { unitNamed } from '../quantities/units.ts';
import type { FieldValue } from './read-inputs.ts';
import type { InputSpec, ListSpec, NumberSpec, RowsSpec } from './sheet-kind.ts';

/** A field's problem; what was typed is kept beside it. `odd` is asked about and computed all the same. */
export interface InputProblem {
  readonly input: string;
  readonly weight: 'not understood' | 'impossible' | 'odd';
  /** A whole sentence. */
  readonly what: string;
  readonly kept: string;
}

export interface ReadField {
  readonly value: FieldValue | null;
  readonly problems: readonly InputProblem[];
}

type Measured = NumberSpec | ListSpec | RowsSpec;

/** A field of several numbers. */
export type CellSpec = ListSpec | RowsSpec;

/** One field as typed; nothing is guessed. */
export function readField(id: string, spec: InputSpec, typed: string): ReadField {
  const text = typed
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/[\u00a0\u2009\u202f]/g, ' ')
    .trim();
  if (text === '') return { value: null, problems: [] };
  const problem = (weight: InputProblem['weight'], what: string): InputProblem => ({
    input: id,
    weight,
    what,
    kept: typed,
  });
  if (spec.kind === 'text') return { value: { kind: 'word', word: text }, problems: [] };
  if (spec.kind === 'choice') {
    const answer = spec.answers.find((each) => each.toLowerCase() === text.toLowerCase());
    if (answer !== undefined) return { value: { kind: 'word', word: answer }, problems: [] };
    return {
      value: null,
      problems: [problem('not understood', `${spec.label} is one of: ${spec.answers.join(', ')}.`)],
    };
  }

  const rows = splitRows(text, spec);
  const read = rows.map((row) => row.map((item) => readItem(item, spec)));
  const items = read.flat();
  if (items.length === 0 || items.some((item) => item === null)) {
    return { value: null, problems: [problem('not understood', notUnderstood(spec))] };
  }
  const numbers = items.flatMap((item) => (item === null ? [] : [item]));
  const values = numbers.map(({ value }) => value);
  const said = numbers.flatMap(({ off }) => (off === null ? [] : [off]));
  const off = said.length === 0 ? null : Math.max(...said);
  const impossible = values.find((value) => value < spec.possible[0] || value > spec.possible[1]);
  if (impossible !== undefined) {
    return { value: null, problems: [problem('impossible', cannotBe(spec, impossible))] };
  }
  const odd = values.find((value) => spec.usual && (value < spec.usual[0] || value > spec.usual[1]));
  const asked =
    odd === undefined || spec.usual === undefined
      ? []
      : [
          problem(
            'odd',
            `${spec.label} ${shown(odd, spec.unit)} is unusual (${between(spec.usual, spec.unit)}); is it right?`,
          ),
        ];

  if (spec.kind === 'number') {
    if (values.length > 1 && spec.repeats === undefined) {
      return { value: null, problems: [problem('not understood', `${spec.label} takes one number.`)] };
    }
    const value = spec.repeats === 'lowest' ? Math.min(...values) : Math.max(...values);
    return { value: { kind: 'number', value, repeats: values, off }, problems: asked };
  }
  if (spec.kind === 'rows') {
    const width = spec.columns ?? read[0]?.length ?? 0;
    if (read.some((row) => row.length !== width)) {
      return {
        value: null,
        problems: [problem('not understood', `${spec.label}: each ${spec.row} needs ${width} numbers.`)],
      };
    }
    const table = read.map((row) => row.flatMap((item) => (item === null ? [] : [item.value])));
    return { value: { kind: 'rows', rows: table, off }, problems: asked };
  }
  const fewest = spec.fewest ?? 1;
  if (values.length < fewest) {
    return { value: null, problems: [problem('not understood', `${spec.label} needs at least ${fewest} numbers.`)] };
  }
  return { value: { kind: 'list', values, off }, problems: asked };
}

/** Rows on lines or after semicolons, each number with the text it was typed as. */
export function rowTexts(text: string, spec: Measured): string[][] {
  const lines = text.split(/[\n;]+/).filter((row) => row.trim() !== '');
  return lines.map((row) => splitRow(row.trim(), spec));
}

/** A list may stand on lines as well. */
function splitRows(text: string, spec: Measured): string[][] {
  const rows = withUnits(rowTexts(text, spec));
  return spec.kind === 'rows' ? rows : [rows.flat()];
}

/** Numbers in a row stand apart by `/`, tabs, a comma with a space, or spaces. */
function splitRow(text: string, spec: Measured): string[] {
  const whole = readNumber(text);
  const fraction = text.includes('/');
  // One number with its unit, a fraction of an inch among them: `7/16 in`. Without a unit `1/2` are two readings, and
  // `445 440` are two as well where several are asked for, not 445 440.
  const grouped = /\d\t/.test(text) || (spec.kind !== 'number' && !fraction && /\d \d/.test(text));
  const alone = whole !== null && !grouped && (whole.unitText === '' ? !fraction : isOneUnit(whole.unitText));
  if (alone) {
    return [text];
  }
  // Between spaces a stroke parts readings; without them it may be a fraction's own: `7/16 in / 1/2 in`.
  const pieces = text.split(/\s+\/\s+(?=[-+]?[.,]?\d)|\s*\t\s*|,\s+/).filter((piece) => piece !== '');
  if (pieces.length > 1) return pieces.flatMap((piece) => splitRow(piece, spec));
  return text
    .replace(/\+\/-|\+-/g, '±')
    .split(/\s*\/\s*(?=[-+]?[.,]?\d)|\t+|,\s+|(?<!±\s*)\s+(?=[-+]?[.,]?\d)/)
    .filter((part) => part.trim() !== '');
}

/** A unit may hold digits itself: `mm2`, `mm per 30 min`; what follows a number may also be the next number. */
const isOneUnit = (text: string): boolean =>
  !/\d/.test(text) ||
  unitNamed(text) !== null ||
  /^[^\d/].*(?:\/|\bper\b|\bin\b)\s*\d+\s*(?:s|min|h|seconds?|minutes?|hours?)$/i.test(text);

/** A number without a unit has that of the next one that names it: `31/30/31 kPa`. */
function withUnits(rows: readonly (readonly string[])[]): string[][] {
  let unit = '';
  return rows
    .toReversed()
    .map((row) =>
      row
        .toReversed()
        .map((item) => {
          const typed = readNumber(item)?.unitText ?? null;
          if (typed !== null && typed !== '') unit = typed;
          return typed === '' && unit !== '' ? `${item} ${unit}` : item;
        })
        .toReversed(),
    )
    .toReversed();
}

function readItem(text: string, spec: Measured): { value: number; off: number | null } | null {
  const known = unitNamed(spec.unit) !== null;
  // A unit of this sheet alone (ppm, Ah) is not in the table of units: it may be typed or left out.
  const bare =
    !known && spec.unit !== '' && text.toLowerCase().endsWith(spec.unit.toLowerCase())
      ? text.slice(0, text.length - spec.unit.length).trim()
      : text;
  const kind: QuantityKind = {
    ...plainKind,
    unit: spec.unit,
    ...(spec.difference === true ? { difference: true } : {}),
  };
  const { value, uncertainty } = readQuantity(bare, known ? spec.unit : '', 'measured', kind);
  return value === null ? null : { value, off: uncertainty };
}

const plainKind: QuantityKind = { id: '', label: '', unit: '', range: null, bad: 'neither', fallback: null };

const shown = (value: number, unit: string): string => {
  const number = String(Number(value.toPrecision(6)));
  return unit === '' ? number : `${number} ${unit}`;
};

const between = ([least, most]: readonly [number, number], unit: string): string =>
  `usually ${Number(least.toPrecision(6))} to ${shown(most, unit)}`;

function cannotBe(spec: Measured, value: number): string {
  const [least, most] = spec.possible;
  const because =
    spec.because ??
    (value < least
      ? least === 0
        ? 'it cannot be less than nothing'
        : `it cannot be under ${shown(least, spec.unit)}`
      : `it cannot be over ${shown(most, spec.unit)}`);
  return `${spec.label} cannot be ${shown(value, spec.unit)}: ${because}.`;
}

function notUnderstood(spec: Measured): string {
  const what =
    spec.kind === 'number'
      ? 'a number'
      : spec.kind === 'rows'
        ? `rows of numbers, one ${spec.row} a line`
        : 'a list of numbers';
  return `${spec.label} is ${what}${spec.unit === '' ? '' : ` in ${spec.unit} or a unit that measures the same`}.`;
}
