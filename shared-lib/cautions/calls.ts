import type { Finding } from '../model/finding.ts';
import type { Layout } from '../model/layout.ts';
import type { Reading } from '../model/reading.ts';
import type { WorkedOn, WorkOnRecord } from '../work/after-work.ts';
import type { CautionClause, FindingClause, MachineClause, SheetClause, StepClause } from './caution.ts';
import { matchesPlace } from './matches-place.ts';
import type { WorkStep } from './work-step.ts';

/** All that a rule is asked of. */
export interface CautionRecord {
  readonly layout: Layout;
  /** Those that still stand. */
  readonly findings: readonly Finding[];
  readonly readings: readonly Reading[];
  /** Work done in the visit, or about to be. */
  readonly steps?: readonly WorkStep[];
  /** What the owner took: its work, and the findings it takes away. */
  readonly chosen?: { readonly steps: readonly WorkStep[]; readonly fixes: ReadonlySet<string> } | null;
  /** What was carried out; what it has mended calls nothing any more. */
  readonly done?: WorkOnRecord | null;
}

/** What called a caution: the clause, and the thing in the record that it met. */
export type CautionCall =
  | {
      readonly by: 'finding';
      readonly clause: FindingClause;
      readonly findingId: string;
      readonly place: string | null;
      /** What the work made of it, where work is on record and did not end it. */
      readonly worked?: WorkedOn;
    }
  | { readonly by: 'sheet'; readonly clause: SheetClause; readonly readingId: string; readonly sheet: string }
  | { readonly by: 'step'; readonly clause: StepClause; readonly work: WorkStep; readonly ofChosen: boolean }
  | { readonly by: 'machine'; readonly clause: MachineClause };

function callsByFinding(clause: FindingClause, record: CautionRecord): CautionCall[] {
  return record.findings
    .filter((finding) => finding.kind === 'condition' && !finding.binned)
    .flatMap((finding): CautionCall[] => {
      const { at, defects, facts, method, dueNow, leftOpen } = clause;
      if (finding.state === 'none-found' && method === undefined) return [];
      const place = finding.locations.find((location) => at === undefined || matchesPlace(location, at, record.layout));
      if (at !== undefined && place === undefined) return [];
      if (defects !== undefined && !defects.some((defect) => defect === finding.defect)) return [];
      if (facts !== undefined && !facts.some((fact) => finding.facts.includes(fact))) return [];
      if (method !== undefined && !finding.methods.includes(method)) return [];
      if (dueNow === true && !(finding.runWorse === true && finding.urgency === 0)) return [];
      if (leftOpen === true && record.chosen?.fixes.has(finding.id) === true) return [];
      return [{ by: 'finding', clause, findingId: finding.id, place: place ?? null }];
    });
}

function callsBySheet(clause: SheetClause, record: CautionRecord): CautionCall[] {
  const { sheets, verdicts, at } = clause;
  return record.readings
    .filter(
      (reading) =>
        sheets.includes(reading.sheet) &&
        (verdicts === undefined || reading.results.some(({ verdict }) => verdicts.includes(verdict))) &&
        (at === undefined || matchesPlace(reading.at, at, record.layout)),
    )
    .map(({ id, sheet }) => ({ by: 'sheet', clause, readingId: id, sheet }));
}

function callsByStep(clause: StepClause, record: CautionRecord): CautionCall[] {
  const { layout } = record;
  const { steps, at, machineHas } = clause;
  if (machineHas !== undefined && !(layout.has ?? []).some((part) => matchesPlace(part, machineHas, layout))) return [];
  const called = (works: readonly WorkStep[], ofChosen: boolean): CautionCall[] =>
    works
      .filter(
        (work) =>
          steps.includes(work.step) && (at === undefined || (work.at !== null && matchesPlace(work.at, at, layout))),
      )
      .map((work) => ({ by: 'step', clause, work, ofChosen }));
  return [...called(record.steps ?? [], false), ...called(record.chosen?.steps ?? [], true)];
}

function callsByMachine(clause: MachineClause, { layout }: CautionRecord): CautionCall[] {
  const { has, articulated, fuels } = clause;
  const is =
    (has !== undefined && (layout.has ?? []).some((part) => matchesPlace(part, has, layout))) ||
    (articulated === true && layout.articulated === true) ||
    fuels?.includes(layout.engine.fuel) === true;
  return is ? [{ by: 'machine', clause }] : [];
}

/** Everything in the record that a clause meets. */
export function callsOf(clause: CautionClause, record: CautionRecord): CautionCall[] {
  switch (clause.by) {
    case 'finding':
      return callsByFinding(clause, record);
    case 'sheet':
      return callsBySheet(clause, record);
    case 'step':
      return callsByStep(clause, record);
    case 'machine':
      return callsByMachine(clause, record);
  }
}
