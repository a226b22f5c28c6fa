import type { Verdict } from '../model/reading.ts';
import { judge } from '../verdict/judge.ts';
import type { Limit } from '../verdict/limit.ts';
import { worstVerdict } from '../verdict/worst.ts';
import { listed } from '../wording/listed.ts';
import { applyInstrument } from './apply-instrument.ts';
import { sheetOf } from './index.ts';
import type { Numbers, SheetInput, SheetOutcome, SheetResult } from './outcome.ts';
import { type Propagated, propagate } from './propagate.ts';
import { type InputProblem, readField } from './read-fields.ts';
import { type Fields, readInputs } from './read-inputs.ts';
import { numberIn, readLimits } from './read-limits.ts';
import type { Computed, ComputedLine, ResultSpec, Sheet } from './sheet-kind.ts';
import { waysLeft } from './ways.ts';

// What a caller hands in and gets back, beside the one function it calls.
export type { SheetInput, SheetOutcome, SheetResult, TypedLimit } from './outcome.ts';
export { toResultLines } from './to-result-lines.ts';

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

/** One way is a list of what is lacking; several are one choice between them. */
const asked = (ways: readonly (readonly string[])[]): readonly string[] => {
  const [only = []] = ways;
  return ways.length < 2 ? only : [ways.map((way) => listed(way)).join(', or ')];
};

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
      numberIn(index === numbers.length - 1 ? each : `${each} ${unitText}`, spec.unit, spec.difference),
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
          : asked(waysLeft(groups, (id) => fields.has(id)).map((way) => way.map((id) => labelOf(sheet, id)))),
        voidBecause: null,
      },
    ];
  });
}
