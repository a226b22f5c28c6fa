import type { Finding } from '../model/finding.ts';
import type { Layout } from '../model/layout.ts';
import type { Reading } from '../model/reading.ts';
import type { WorkOnRecord } from '../work/after-work.ts';
import { standingAfter } from './after-work.ts';
import { type CautionCall, type CautionRecord, callsOf } from './calls.ts';
import type { Caution } from './caution.ts';
import { cautions } from './index.ts';
import { signalWords } from './signal-word.ts';
import type { WorkStep } from './work-step.ts';

/** At the bench before the sheet or step that calls it; in the report for whoever uses the machine. */
export type ShownWhere = 'bench' | 'report';

export interface CalledCaution {
  readonly caution: Caution;
  /** What called it, at least one. */
  readonly because: readonly CautionCall[];
}

const audienceOf: Record<ShownWhere, Caution['audience']> = { bench: 'bench', report: 'owner' };

/** The report speaks of what is found and of the work that was agreed, not of the tests that were made. */
function speaksInReport(call: CautionCall): boolean {
  switch (call.by) {
    case 'finding':
    case 'machine':
      return true;
    case 'sheet':
      return call.clause.verdicts !== undefined;
    case 'step':
      return call.ofChosen && call.clause.benchOnly !== true;
  }
}

/** The same finding, sheet or step calls once, by the first clause it meets. */
function keyOf(call: CautionCall): string {
  switch (call.by) {
    case 'finding':
      return `finding ${call.findingId}`;
    case 'sheet':
      return `sheet ${call.readingId}`;
    case 'step':
      return `step ${call.ofChosen} ${call.work.step} ${call.work.at}`;
    case 'machine':
      return 'machine';
  }
}

function once(calls: readonly CautionCall[]): CautionCall[] {
  const met = new Set<string>();
  return calls.filter((call) => {
    const key = keyOf(call);
    if (met.has(key)) return false;
    met.add(key);
    return true;
  });
}

/**
 * The cautions that a record calls for, once each, the most serious signal word first, then in the catalogue's order.
 *
 * Source: the handbook's rule (chapter 9): triggers are alternatives; the report has those of open findings, of the work
 * of the chosen option, and of what the machine has. What the work on record has mended is not open.
 */
export function cautionsFor(record: CautionRecord, where: ShownWhere): readonly CalledCaution[] {
  return cautions
    .filter(({ audience }) => audience === 'both' || audience === audienceOf[where])
    .flatMap((caution) => {
      const called = caution.calledBy.flatMap((clause) => callsOf(clause, record));
      const calls = standingAfter(called, caution, record);
      const because = once(where === 'report' ? calls.filter(speaksInReport) : calls);
      return because.length === 0 ? [] : [{ caution, because }];
    })
    .sort(
      (a, b) =>
        signalWords.indexOf(a.caution.word) - signalWords.indexOf(b.caution.word) ||
        a.caution.id.localeCompare(b.caution.id),
    );
}

/** What stands before a sheet is filled in at a place. */
export function cautionsForSheet(sheet: string, at: string, layout: Layout): readonly CalledCaution[] {
  const reading: Reading = {
    id: 'to be taken',
    visitId: '',
    sheet,
    sheetVersion: 0,
    at,
    inputs: {},
    conditions: {},
    remark: '',
    notTakenBecause: null,
    instrumentId: null,
    takenAtMs: 0,
    results: [],
  };
  return called({ layout, findings: [], readings: [reading] });
}

/** What stands before a step of work. */
export function cautionsForStep(work: WorkStep, layout: Layout): readonly CalledCaution[] {
  return called({ layout, findings: [], readings: [], steps: [work] });
}

/** What stands on a finding's card while it is being written, and what of it stands after the work. */
export function cautionsForFinding(
  finding: Finding,
  layout: Layout,
  done: WorkOnRecord | null = null,
): readonly CalledCaution[] {
  return called({ layout, findings: [finding], readings: [], done });
}

/** What the machine calls for whatever is done stands with the visit, not before each step. */
function called(record: CautionRecord): readonly CalledCaution[] {
  return cautionsFor(record, 'bench').filter(({ because }) => because.some(({ by }) => by !== 'machine'));
}
