import type { ResultLine, Verdict } from '../model/reading.ts';
import { readQuantity } from '../quantities/read-quantity.ts';
import { unitNamed } from '../quantities/units.ts';
import { judge } from '../verdict/judge.ts';
import { type Edges, type Limit, type LimitSource, limitProblem } from '../verdict/limit.ts';
import { worstVerdict } from '../verdict/worst.ts';
import { applyInstrument } from './apply-instrument.ts';
import { sheetOf } from './index.ts';
import { type Propagated, propagate } from './propagate.ts';
import { type InputProblem, readField } from './read-fields.ts';
import { type Fields, readInputs } from './read-inputs.ts';
import type { Computed, ComputedLine, ResultSpec, Sheet, SheetPicture } from './sheet-kind.ts';

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

type Numbers = number | readonly number[];

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

/**
 * Computes one sheet from what was typed.
 *
 * Every problem is named at its field and what was typed is kept; an impossible value takes no part in any result.
 *
 * @throws RangeError for an id that is no sheet
 */
export function compute(sheetId: string, input: SheetInput): SheetOutcome {
  const sheet = sheetOf(sheetId);
  if (sheet === null) throw new RangeError(`no sheet is called ${sheetId}`);
  return computeSheet(sheet, input);
}

export function computeSheet(sheet: Sheet, input: SheetInput): SheetOutcome {
  const head = { sheet: sheet.id, version: sheet.version, name: sheet.name };
  const notTaken = input.notTakenBecause?.trim() ?? '';
  if (notTaken !== '') {
    return {
      ...head,
      verdict: 'not taken',
      results: [],
      problems: [],
      voidBecause: null,
      notTakenBecause: notTaken,
      says: [],
      picture: null,
    };
  }
  const at = input.at ?? '';
  const { fields, problems } = readAll(sheet, input, at);
  const run = (with_: Fields): Computed => sheet.compute(readInputs(with_, at));
  const computed = run(fields);
  const lines = computed.lines.filter(isUsable);
  const notNumbers = new Set(computed.lines.flatMap((line) => (isUsable(line) ? [] : [line.of])));
  const off = sheet.ownUncertainty === true ? [] : propagate(fields, lines, run);
  const typedLimits = readLimits(sheet, input.limits ?? {});
  const finish = finisher(sheet, typedLimits.limits, computed.void ?? null);
  const results = [
    ...lines.map((line, index) => finish(line, off[index] ?? null)),
    ...takenOver(sheet, input.results ?? {}, lines, finish),
    ...lacking(sheet, fields, lines, input.results ?? {}, notNumbers),
  ];
  return {
    ...head,
    verdict: results.length === 0 ? 'recorded only' : worstVerdict(results.map(({ verdict }) => verdict)),
    results,
    problems: [...problems, ...typedLimits.problems, ...notTakenOver(input.results ?? {}, results)],
    voidBecause: computed.void ?? null,
    notTakenBecause: null,
    says: computed.says ?? [],
    picture: computed.picture ?? null,
  };
}

const isUsable = (line: ComputedLine): boolean =>
  line.seen !== undefined || (line.value !== undefined && [line.value].flat().every(Number.isFinite));

function readAll(sheet: Sheet, input: SheetInput, at: string): { fields: Fields; problems: readonly InputProblem[] } {
  const specs = { ...sheet.conditions, ...sheet.inputs };
  const typed: Record<string, string> = { ...input.conditions, ...input.inputs };
  const problems: InputProblem[] = [];
  const fields = new Map();
  for (const [id, text] of Object.entries(typed)) {
    const spec = Object.hasOwn(specs, id) ? specs[id] : undefined;
    if (spec === undefined) {
      if (input.inputs !== undefined && Object.hasOwn(input.inputs, id)) {
        problems.push({ input: id, weight: 'not understood', what: `This sheet has no field “${id}”.`, kept: text });
      }
      continue;
    }
    const read = readField(id, spec, text);
    problems.push(...read.problems);
    if (read.value !== null) fields.set(id, applyInstrument(read.value, spec, input.instrument ?? null));
  }
  for (const check of sheet.checks(readInputs(fields, at))) {
    problems.push({ ...check, kept: typed[check.input] ?? '' });
    if (check.weight === 'impossible') fields.delete(check.input);
  }
  const impossible = new Set(problems.filter(({ weight }) => weight === 'impossible').map(({ input: id }) => id));
  // What cannot be need not be asked about as well.
  return { fields, problems: problems.filter(({ input: id, weight }) => weight !== 'odd' || !impossible.has(id)) };
}

function readLimits(
  sheet: Sheet,
  typed: Readonly<Record<string, TypedLimit>>,
): { limits: ReadonlyMap<string, Limit>; problems: InputProblem[] } {
  const limits = new Map<string, Limit>();
  const problems: InputProblem[] = [];
  for (const [of, limit] of Object.entries(typed)) {
    const spec = specOf(sheet, of);
    const refuse = (what: string, kept: string) =>
      problems.push({ input: `limit: ${of}`, weight: 'not understood', what, kept });
    if (spec === null) {
      refuse(`This sheet has no result “${of}”.`, JSON.stringify(limit));
      continue;
    }
    const edges: { -readonly [Edge in keyof Edges]: Edges[Edge] } = {};
    let understood = true;
    for (const edge of ['min', 'max', 'badBelow', 'badAbove'] as const) {
      const text = limit[edge];
      if (text === undefined || text.trim() === '') continue;
      const value = numberIn(text, spec.unit);
      if (value === null) {
        understood = false;
        refuse(`The limit of “${of}” is a number${spec.unit === '' ? '' : ` in ${spec.unit}`}.`, text);
      } else edges[edge] = value;
    }
    const problem = understood ? limitProblem(edges) : null;
    if (problem !== null) refuse(`The limit of “${of}” cannot be used: ${problem}.`, JSON.stringify(limit));
    else if (understood) {
      limits.set(of, { ...edges, source: limit.source, ...(limit.page === undefined ? {} : { page: limit.page }) });
    }
  }
  return { limits, problems };
}

/** The number of a text in a unit; a unit of the sheet alone may be typed or left out. */
function numberIn(text: string, unit: string): number | null {
  const bare = text.trim();
  if (unitNamed(unit) !== null) return readQuantity(bare, unit, 'measured').value;
  const number = unit !== '' && bare.endsWith(unit) ? bare.slice(0, bare.length - unit.length).trim() : bare;
  return readQuantity(number, '', 'measured').value;
}

/** `charge 2` is the second of the results called `charge`. */
function specOf(sheet: Sheet, name: string): ResultSpec | null {
  const whole = Object.hasOwn(sheet.results, name) ? sheet.results[name] : undefined;
  if (whole !== undefined) return whole;
  const base = Object.keys(sheet.results).find((of) => name.startsWith(`${of} `));
  return base === undefined ? null : (sheet.results[base] ?? null);
}

type Finish = (line: ComputedLine, off: Propagated | null) => SheetResult;

function finisher(sheet: Sheet, limits: ReadonlyMap<string, Limit>, sheetVoid: string | null): Finish {
  return (line, off) => {
    const spec = sheet.results[line.of];
    if (spec === undefined) throw new RangeError(`${sheet.id} computes “${line.of}”, which it does not describe`);
    const of = line.which === undefined ? line.of : `${line.of} ${line.which}`;
    const own = line.limit === undefined ? (spec.usualLimit ?? null) : line.limit;
    const limit = limits.get(of) ?? limits.get(line.of) ?? own;
    const { value: uncertainty, from } = uncertaintyOf(line, spec, off, sheet);
    const voidBecause = line.void ?? sheetVoid;
    const looks = line.seen !== undefined;
    const plain: Verdict = looks
      ? line.seen
        ? 'shown'
        : (line.notSeen ?? 'not found by this test')
      : worstOf(line.value ?? Number.NaN, uncertainty, limit);
    const judged = looks || limit !== null;
    const lacksUncertainty = !looks && limit !== null && uncertainty === null;
    return {
      of,
      value: line.value ?? null,
      unit: spec.unit,
      seen: line.seen ?? null,
      formula: spec.formula,
      basis: spec.from ?? null,
      crossCheck: line.crossCheck ?? null,
      uncertainty,
      uncertaintyFrom: from,
      limit,
      verdict: voidBecause !== null && judged ? 'void' : plain,
      needs: lacksUncertainty ? ['what the reading can be off by'] : [],
      voidBecause: voidBecause !== null && judged ? voidBecause : null,
    };
  };
}

function worstOf(value: Numbers, uncertainty: number | null, limit: Limit | null): Verdict {
  return worstVerdict([value].flat().map((each) => judge(each, uncertainty, limit)));
}

function uncertaintyOf(
  line: ComputedLine,
  spec: ResultSpec,
  off: Propagated | null,
  sheet: Sheet,
): { value: number | null; from: string | null } {
  if (line.seen !== undefined && line.uncertainty === undefined) return { value: null, from: null };
  const labels = (off?.by ?? []).map((id) => labelOf(sheet, id)).join(', ');
  if (off?.complete === true) return { value: off.off, from: `what ${labels} can be off by` };
  const fallback = line.uncertainty ?? fallbackOf(line, spec);
  if (fallback === null) return { value: off?.off ?? null, from: off === null ? null : `what ${labels} can be off by` };
  if (off !== null && off.off > fallback.value) return { value: off.off, from: `what ${labels} can be off by` };
  return fallback;
}

function fallbackOf(line: ComputedLine, spec: ResultSpec): { value: number; from: string } | null {
  if (spec.fallback === undefined || line.value === undefined) return null;
  const size = Math.max(...[line.value].flat().map(Math.abs));
  return 'share' in spec.fallback
    ? {
        value: spec.fallback.share * size,
        from: `${spec.fallback.share * 100} % of the value, usual for such a reading; common practice, no source`,
      }
    : { value: spec.fallback.absolute, from: 'usual for such a reading; common practice, no source' };
}

const labelOf = (sheet: Sheet, id: string): string =>
  (sheet.inputs[id] ?? sheet.conditions[id])?.label.toLowerCase() ?? id;

/** Results typed without their inputs; a computed one stands before them. */
function takenOver(
  sheet: Sheet,
  typed: Readonly<Record<string, string>>,
  lines: readonly ComputedLine[],
  finish: Finish,
): SheetResult[] {
  return Object.entries(typed).flatMap(([of, text]): SheetResult[] => {
    const spec = Object.hasOwn(sheet.results, of) ? sheet.results[of] : undefined;
    if (spec === undefined || lines.some((line) => line.of === of)) return [];
    const words = text.trim().toLowerCase();
    if (spec.looksFor === true) {
      if (words !== 'shown' && words !== 'not found by this test') return [];
      return [{ ...finish({ of, seen: words === 'shown' }, null), basis: null, formula: 'taken over as typed' }];
    }
    const numbers = text.trim().split('/');
    const unitText = /^[-\d.,±\s]*(.*)$/.exec(numbers.at(-1) ?? '')?.[1] ?? '';
    const values = numbers.map((each, index) =>
      numberIn(index === numbers.length - 1 ? each : `${each} ${unitText}`, spec.unit),
    );
    const known = values.flatMap((value) => (value === null ? [] : [value]));
    const [first] = known;
    if (first === undefined || known.length !== values.length) return [];
    const line: ComputedLine = { of, value: known.length === 1 ? first : known };
    return [{ ...finish(line, null), basis: null, formula: 'taken over as typed' }];
  });
}

/** Typed results that are no result of the sheet, or not a number or word it understands. */
function notTakenOver(typed: Readonly<Record<string, string>>, results: readonly SheetResult[]): InputProblem[] {
  return Object.entries(typed).flatMap(([of, text]): InputProblem[] => {
    const taken = results.some(
      (line) => (line.of === of || line.of.startsWith(`${of} `)) && line.verdict !== 'not taken',
    );
    return taken
      ? []
      : [
          {
            input: `result: ${of}`,
            weight: 'not understood',
            what: `“${of}” is not a result this sheet understands so.`,
            kept: text,
          },
        ];
  });
}

/**
 * Results that could not be computed, with what they need: the sheet's main ones, and those that a field was typed for
 * which no other line makes use of.
 */
function lacking(
  sheet: Sheet,
  fields: Fields,
  lines: readonly ComputedLine[],
  typed: Readonly<Record<string, string>>,
  notNumbers: ReadonlySet<string>,
): SheetResult[] {
  const used = new Set(lines.flatMap(({ of }) => sheet.results[of]?.needs.flat() ?? []));
  return Object.entries(sheet.results).flatMap(([of, spec]): SheetResult[] => {
    if (Object.hasOwn(typed, of) || lines.some((line) => line.of === of)) return [];
    const groups = spec.needs.map((need) => [need].flat() as readonly string[]);
    const missing = groups.filter((ids) => !ids.some((id) => fields.has(id)));
    const begun = groups.flat().some((id) => fields.has(id) && !used.has(id));
    const outside = missing.length === 0 && notNumbers.has(of);
    if (!outside && (missing.length === 0 || !(spec.main === true || begun))) return [];
    return [
      {
        of,
        value: null,
        unit: spec.unit,
        seen: null,
        formula: spec.formula,
        basis: spec.from ?? null,
        crossCheck: null,
        uncertainty: null,
        uncertaintyFrom: null,
        limit: null,
        verdict: 'recorded only',
        needs: outside
          ? ['values the formula holds for']
          : missing.map((ids) => ids.map((id) => labelOf(sheet, id)).join(' or ')),
        voidBecause: null,
      },
    ];
  });
}

const digits = (value: Numbers): string =>
  [value]
    .flat()
    .map((each) => String(Number(each.toPrecision(6))))
    .join('/');

const withUnit = (value: Numbers, unit: string): string => `${digits(value)}${unit === '' ? '' : ` ${unit}`}`;

/** Results as the record keeps them: texts with units. */
export function toResultLines(outcome: SheetOutcome): ResultLine[] {
  return outcome.results.map((result): ResultLine => {
    const show = (value: number | undefined) => (value === undefined ? undefined : withUnit(value, result.unit));
    const { limit } = result;
    const edges = limit && {
      min: show(limit.min),
      max: show(limit.max),
      badBelow: show(limit.badBelow),
      badAbove: show(limit.badAbove),
      page: limit.page,
    };
    return {
      of: result.of,
      value: result.value === null ? null : withUnit(result.value, result.unit),
      seen: result.seen,
      limit: limit && {
        ...Object.fromEntries(Object.entries(edges ?? {}).filter(([, text]) => text !== undefined)),
        source: limit.source,
      },
      uncertainty: result.uncertainty === null ? null : withUnit(result.uncertainty, result.unit),
      uncertaintyFrom: result.uncertaintyFrom,
      verdict: result.verdict,
    };
  });
}
