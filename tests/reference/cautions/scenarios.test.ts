import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { CautionCall, CautionRecord } from '../../../shared-lib/cautions/calls.ts';
import { cautionsFor, type ShownWhere } from '../../../shared-lib/cautions/cautions-for.ts';
import { signalWords } from '../../../shared-lib/cautions/signal-word.ts';
import type { WorkStep } from '../../../shared-lib/cautions/work-step.ts';
import { standingFindings } from '../../../shared-lib/ranking/to-rankable.ts';
import { Scenario } from '../../../shared-lib/scenario/schema.ts';
import type { ScenarioChoice } from '../../../shared-lib/scenario/shape.ts';
import { toRecords } from '../../../shared-lib/scenario/to-records.ts';

/**
 * Worked cases of the trade's handbook: for every visit the cautions that its catalogue calls for, where each is shown
 * and what called it, written down before this program existed.
 */
const folder = new URL('../scenarios/', import.meta.url);
const files = readdirSync(folder).filter((name) => /^s\d.*\.json$/.test(name));

/** What we call besides the written cases, each with its reason. */
const furtherCalls: Readonly<Record<string, readonly string[]>> = {
  // The wheel comes off over linings: the dust flies then, found or not. The handbook names the part, not the step.
  's7-roller-brakes.json V1 CAU-24': ['chosen wheel-off BRK/LINING.L'],
};

/** The clauses of a `because`, each as the thing in the record it met: `F1`, `R3`, `lift-off ENG/HD.1`. */
function thingsIn(because: string): string[] {
  return because.split('; ').map((clause) => {
    const sheet = /^sheet MS-\d\d \((R\d+)\)/.exec(clause)?.[1];
    const finding = /^(F\d+) /.exec(clause)?.[1];
    return sheet ?? finding ?? clause.replace(/^chosen option: /, 'chosen ');
  });
}

function worksOf(steps: ScenarioChoice['steps']): WorkStep[] {
  return (steps ?? []).map(({ step, at }) => ({ step, at: at ?? null }));
}

describe.each(files)('%s', (name) => {
  const scenario = Scenario.parse(JSON.parse(readFileSync(new URL(name, folder), 'utf8')));
  const records = toRecords(scenario, (what) => what);
  const { layout } = records.layout;

  describe.each(scenario.expect?.visits ?? [])('visit $visit', (wanted) => {
    const at = records.visits.findIndex((visit) => visit.name === wanted.visit);
    const visit = records.visits[at];
    const source = scenario.visits[at];
    if (visit === undefined || source === undefined) throw new Error(`no visit ${wanted.visit}`);
    const chosen = source.choices?.find((choice) => choice.chosen === true);
    const record: CautionRecord = {
      layout,
      findings: standingFindings(visit.findings),
      readings: visit.readings,
      steps: worksOf(source.steps),
      chosen:
        chosen === undefined
          ? null
          : {
              steps: worksOf(chosen.steps),
              fixes: new Set(
                Object.entries(chosen.dispositions)
                  .filter(([, disposition]) => disposition === 'fixed')
                  .map(([id]) => visit.findingIdOf.get(id) ?? id),
              ),
            },
    };
    const called = { bench: cautionsFor(record, 'bench'), report: cautionsFor(record, 'report') };
    const shortNameOf = (id: string) => id.slice(id.lastIndexOf('/') + 1);
    const thingOf = (call: CautionCall): string => {
      switch (call.by) {
        case 'finding':
          return shortNameOf(call.findingId);
        case 'sheet':
          return shortNameOf(call.readingId);
        case 'step':
          return `${call.ofChosen ? 'chosen ' : ''}${call.work.step} ${call.work.at}`;
        case 'machine':
          return 'machine';
      }
    };

    it('shows exactly the cautions that were written down, at the bench and in the report', () => {
      const shown = new Map<string, ShownWhere[]>();
      for (const where of ['bench', 'report'] as const) {
        for (const { caution } of called[where]) shown.set(caution.id, [...(shown.get(caution.id) ?? []), where]);
      }
      expect(Object.fromEntries(shown)).toEqual(
        Object.fromEntries(wanted.cautions.map(({ id, show }) => [String(id), show])),
      );
    });

    it('each is called by the findings, sheets and steps that were written down', () => {
      const things = new Map<string, Set<string>>();
      for (const { caution, because } of [...called.bench, ...called.report]) {
        const known = things.get(caution.id) ?? new Set();
        for (const call of because) known.add(thingOf(call));
        things.set(caution.id, known);
      }
      for (const { id, because } of wanted.cautions) {
        const further = furtherCalls[`${name} ${wanted.visit} ${id}`] ?? [];
        expect([...(things.get(String(id)) ?? [])].sort(), String(id)).toEqual(
          [...thingsIn(String(because)), ...further].sort(),
        );
      }
    });

    it.each(wanted.handMadeOnly ?? [])('does not call $id, which only the hand-made list has: $because', ({ id }) => {
      expect([...called.bench, ...called.report].map(({ caution }) => caution.id)).not.toContain(id);
    });

    it.each(['bench', 'report'] as const)('%s: once each, the most serious word first', (where) => {
      const ids = called[where].map(({ caution }) => caution.id);
      expect(new Set(ids).size).toBe(ids.length);
      const ranks = called[where].map(({ caution }) => signalWords.indexOf(caution.word));
      expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    });
  });
});
