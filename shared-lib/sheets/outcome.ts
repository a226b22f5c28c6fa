import type { Verdict } from '../model/reading.ts';
import type { Limit, LimitSource } from '../verdict/limit.ts';
import type { InputProblem } from './read-fields.ts';
import type { SheetPicture } from './sheet-kind.ts';

/** A limit as typed: numbers with or without a unit, and whose it is. */
export interface TypedLimit {
  readonly min?: string;
  readonly max?: string;
  readonly badBelow?: string;
  readonly badAbove?: string;
  readonly source: LimitSource;
  readonly page?: string;
}

export interface SheetInput {
  readonly inputs?: Readonly<Record<string, string>>;
  /** Of the reading and of the visit: altitude, system volts, engine state. Words no sheet asks for are kept, not judged. */
  readonly conditions?: Readonly<Record<string, string>>;
  /** By the result's name; they come before the sheet's own default. */
  readonly limits?: Readonly<Record<string, TypedLimit>>;
  /** Results taken over without their inputs: a number with its unit, `shown` or `not found by this test`. */
  readonly results?: Readonly<Record<string, string>>;
  /** The place on the machine, where the sheet's default depends on it. */
  readonly at?: string;
  readonly instrument?: { readonly resolution: string };
  readonly notTakenBecause?: string;
}

export type Numbers = number | readonly number[];

export interface SheetResult {
  readonly of: string;
  /** The basis of the verdict: a published standard's result where there is one. */
  readonly value: Numbers | null;
  readonly unit: string;
  readonly seen: boolean | null;
  readonly formula: string;
  /** The standard or table behind the formula; null for plain arithmetic and results taken over as typed. */
  readonly basis: string | null;
  /** The handbook's approximation beside a standard's value. */
  readonly crossCheck: { readonly value: Numbers; readonly formula: string } | null;
  readonly uncertainty: number | null;
  readonly uncertaintyFrom: string | null;
  readonly limit: Limit | null;
  readonly verdict: Verdict;
  /** What it lacks, in words. */
  readonly needs: readonly string[];
  readonly voidBecause: string | null;
}

export interface SheetOutcome {
  readonly sheet: string;
  readonly version: number;
  readonly name: string;
  /** That of the worst line. */
  readonly verdict: Verdict;
  readonly results: readonly SheetResult[];
  readonly problems: readonly InputProblem[];
  readonly voidBecause: string | null;
  readonly notTakenBecause: string | null;
  readonly says: readonly string[];
  readonly picture: SheetPicture | null;
}
