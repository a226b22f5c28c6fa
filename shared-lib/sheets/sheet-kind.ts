import type { DefectId } from '../defects/index.ts';
import type { Edges, Limit } from '../verdict/limit.ts';
import type { ReadInputs } from './read-inputs.ts';

/** Outside `possible` a value cannot be: it is named at its field and never computed. Outside `usual` it is asked about. */
interface Ranged {
  readonly label: string;
  /** Empty where there is none. */
  readonly unit: string;
  readonly possible: readonly [least: number, most: number];
  readonly usual?: readonly [least: number, most: number];
  /** Why a value outside `possible` cannot be, as a clause. */
  readonly because?: string;
  /** A difference: degrees Fahrenheit carry no offset. */
  readonly difference?: true;
}

/** `repeats`: the same thing may be read several times; which of the readings counts. All are kept. */
export interface NumberSpec extends Ranged {
  readonly kind: 'number';
  readonly repeats?: 'lowest' | 'highest';
}

/** Several numbers with one meaning. `per-cylinder`: one for each cylinder, in the machine's own order. */
export interface ListSpec extends Ranged {
  readonly kind: 'list' | 'per-cylinder';
  readonly fewest?: number;
}

/** A table: rows on lines or after semicolons, numbers in a row apart by `/`, spaces or tabs. */
export interface RowsSpec extends Ranged {
  readonly kind: 'rows';
  /** What one row and what one column is, for people. */
  readonly row: string;
  readonly column: string;
  /** How many numbers each row has; where absent, all rows have as many as the first. */
  readonly columns?: number;
  /** What the columns are called, where each has a meaning of its own. */
  readonly columnNames?: readonly string[];
}

export interface ChoiceSpec {
  readonly kind: 'choice';
  readonly label: string;
  readonly answers: readonly string[];
}

export interface TextSpec {
  readonly kind: 'text';
  readonly label: string;
}

export type InputSpec = NumberSpec | ListSpec | RowsSpec | ChoiceSpec | TextSpec;
export type InputSpecs = Readonly<Record<string, InputSpec>>;

/** How far a result can be off when nothing better is known. */
export type FallbackUncertainty = { readonly absolute: number } | { readonly share: number };

export interface ResultSpec {
  readonly unit: string;
  /** A difference: degrees Fahrenheit carry no offset. */
  readonly difference?: true;
  /** For people: what is computed from what. */
  readonly formula: string;
  /** Standard, table or 'common practice, no source'; absent for plain arithmetic. */
  readonly from?: string;
  readonly fallback?: FallbackUncertainty;
  /** Ids of the inputs it needs; an inner list means any one of them. */
  readonly needs: readonly (string | readonly string[])[];
  /** Shown as 'needs ...' even when none of its inputs is typed. */
  readonly main?: true;
  /** Looks for a thing instead of measuring: shown, or not found by this test. */
  readonly looksFor?: true;
  /** The default it is held against, also where it is taken over as typed (a machine shop's paper). */
  readonly usualLimit?: Limit;
  /** For people, where the default follows from what is typed: `0.8 of the system’s voltage at least`. */
  readonly usualLimitRule?: string;
  /** The finding to offer when it is beyond its limit or shown; it is never made without being asked for. */
  readonly suggests?: DefectId;
}
export type ResultSpecs = Readonly<Record<string, ResultSpec>>;

/** What a sheet's own computation gives for one of its results. */
export interface ComputedLine<Name extends string = string> {
  readonly of: Name;
  /** Which one, where there are several: `1`, `cylinder 3`. */
  readonly which?: string;
  /** A list where one line holds a number for each cylinder; the worst of them is judged. */
  readonly value?: number | readonly number[];
  readonly seen?: boolean;
  /** `no growth shown` where a trend is looked for and none shows. */
  readonly notSeen?: 'no growth shown';
  /** The handbook's own figure beside a published standard's. */
  readonly crossCheck?: { readonly value: number | readonly number[]; readonly formula: string };
  /** Null: this one is not judged. Absent: the usual limit of the result, if it has one. */
  readonly limit?: Limit | null;
  readonly uncertainty?: { readonly value: number; readonly from: string };
  readonly void?: string;
}

/** The same picture in the window and in the report, as plain numbers. */
export type SheetPicture =
  | {
      readonly kind: 'bore';
      readonly nominalMm: number | null;
      readonly depthsMm: readonly number[] | null;
      /** Rows from the top down, one diameter for each direction. */
      readonly diametersMm: readonly (readonly number[])[];
    }
  | {
      readonly kind: 'surface';
      /** Height above the middle of the minimum zone. */
      readonly points: readonly { readonly xMm: number; readonly yMm: number; readonly heightMm: number }[];
      readonly zoneMm: number;
    }
  | {
      readonly kind: 'bars';
      readonly unit: string;
      readonly values: readonly number[];
      readonly labels: readonly string[];
    }
  | {
      readonly kind: 'trend';
      readonly unit: string;
      readonly points: readonly { readonly hours: number; readonly value: number }[];
      readonly limit: number | null;
    };

export interface Computed<Name extends string = string> {
  readonly lines: readonly ComputedLine<Name>[];
  /** What the numbers point to and what they cannot say; whole sentences. */
  readonly says?: readonly string[];
  /** The conditions were not met: nothing on the sheet may be judged. */
  readonly void?: string;
  readonly picture?: SheetPicture;
}

/** Something wrong between inputs. `impossible`: the field's value is set aside. `odd`: asked about, computed all the same. */
export interface CheckProblem {
  readonly input: string;
  readonly weight: 'impossible' | 'odd';
  readonly what: string;
}

/** The shelves sheets lie on, in the order they stand. */
export const sheetShelfNames = [
  'Battery, starting, charging',
  'Cooling',
  'Cylinders and head',
  'Crank, oil and fuel',
  'Hydraulics',
  'Steering, brakes, lifting',
  'Any part',
] as const;
export type SheetShelfName = (typeof sheetShelfNames)[number];

/** A clause; with `unless`, one that a field of this value or more answers: a test taken hot. */
export type OpenQuestion =
  | string
  | { readonly what: string; readonly unless: { readonly field: string; readonly atLeast: number } };

export type HowShown = 'lines' | 'bars' | 'bore' | 'surface' | 'trend';

export interface Description<
  Inputs extends InputSpecs = InputSpecs,
  Conditions extends InputSpecs = InputSpecs,
  Results extends ResultSpecs = ResultSpecs,
> {
  readonly id: string;
  /** For people; the id is for the program only. */
  readonly name: string;
  /** The question it answers and how it is read, one or two sentences. */
  readonly about: string;
  readonly shelf: SheetShelfName;
  /**
   * Where it is usually taken, first the most usual: a part, or what is below it; none where any part will do.
   * Common practice, no source.
   */
  readonly takenAt: readonly string[];
  /** What a good result does not rule out, and what a bad one does not say, as clauses. Common practice, no source. */
  readonly leavesOpen: { readonly passed: readonly OpenQuestion[]; readonly failed: readonly OpenQuestion[] };
  /** Raised whenever the same inputs could give another result. */
  readonly version: number;
  readonly inputs: Inputs;
  readonly conditions: Conditions;
  readonly results: Results;
  /** Ids of the cautions that stand before it at the bench. */
  readonly cautions: readonly string[];
  readonly shown: HowShown;
  /** It works out itself what its lines can be off by, where moving one number at a time would cost too much. */
  readonly ownUncertainty?: true;
}

export interface Sheet extends Description {
  readonly compute: (given: ReadInputs) => Computed;
  readonly checks: (given: ReadInputs) => readonly CheckProblem[];
}

/** Keeps the ids of inputs and results as types, so that a computation cannot ask for a field that is not there. */
export const describeSheet = <
  const Inputs extends InputSpecs,
  const Conditions extends InputSpecs,
  const Results extends ResultSpecs,
>(
  description: Description<Inputs, Conditions, Results>,
): Description<Inputs, Conditions, Results> => description;

type IdsOf<Specs> = Extract<keyof Specs, string>;

/** A finished sheet: what it asks, with how it is computed. */
export function sheet<Inputs extends InputSpecs, Conditions extends InputSpecs, Results extends ResultSpecs>(
  description: Description<Inputs, Conditions, Results>,
  compute: (given: ReadInputs<IdsOf<Inputs> | IdsOf<Conditions>>) => Computed<IdsOf<Results>>,
  checks: (given: ReadInputs<IdsOf<Inputs> | IdsOf<Conditions>>) => readonly CheckProblem[] = () => [],
): Sheet {
  return { ...description, compute, checks };
}

export const commonPractice = (edges: Edges): Limit => ({
  ...edges,
  source: 'common-practice',
  cites: 'common practice, no source; not the maker’s',
});
