import { stepsToCome } from '../../cautions/after-work.ts';
import type { CautionCall, CautionRecord } from '../../cautions/calls.ts';
import { cautionsFor } from '../../cautions/cautions-for.ts';
import { speakBecause, speakRemains } from '../../cautions/speak-because.ts';
import type { Finding } from '../../model/finding.ts';
import { standingFindings } from '../../ranking/to-rankable.ts';
import { listed } from '../../wording/listed.ts';
import { mendedByWork } from '../after-work.ts';
import type { ReportContext } from '../context.ts';
import type { CautionsSection } from '../model.ts';

/** Findings by their numbers, since their tags stand all over the report, with what work has left of them; all else in words. */
function becauseOf(calls: readonly CautionCall[], context: ReportContext): string {
  const findings = context.record.findings;
  const numbers = calls
    .flatMap((call) => {
      if (call.by !== 'finding') return [];
      const number = findings.find(({ id }) => id === call.findingId)?.number;
      return number === undefined ? [] : [{ number, worked: call.worked }];
    })
    .sort((a, b) => a.number - b.number)
    .map(({ number, worked }) => (worked === undefined ? `${number}` : `${number} (${speakRemains(worked)})`));
  const named = numbers.length === 0 ? [] : [`${numbers.length === 1 ? 'finding' : 'findings'} ${listed(numbers)}`];
  const others = calls
    .filter(({ by }) => by !== 'finding')
    .map((call) => speakBecause(call, findings, context.layout).toLowerCase());
  return `Because of ${listed([...named, ...new Set(others)])}.`;
}

/** A record from elsewhere may hold places that its layout does not have. */
const knownFindings = ({ record, isKnownPlace }: ReportContext): Finding[] =>
  record.findings.map((finding) => ({ ...finding, locations: finding.locations.filter(isKnownPlace) }));

/**
 * The work of the visit, and of the choice that was taken with what that takes away. Where work is on record that counts
 * and not the plan.
 */
function workOf(context: ReportContext): Pick<CautionRecord, 'steps' | 'chosen' | 'done'> {
  const { choices, work, readings, proofs } = context.record;
  const chosen = choices?.choices.find((choice) => choice.chosen);
  const steps = choices?.steps ?? [];
  if (work !== undefined && work.items.length > 0) {
    const toCome = chosen === undefined ? [] : stepsToCome(chosen.steps, work, knownFindings(context));
    return {
      steps,
      chosen: { steps: toCome, fixes: mendedByWork(context) },
      done: { work, readings, proofs },
    };
  }
  const fixed = chosen?.dispositions.filter(({ is }) => is === 'fixed').map(({ findingId }) => findingId);
  return { steps, chosen: chosen === undefined ? null : { steps: chosen.steps, fixes: new Set(fixed) } };
}

/** The cautions of what is still open after the work on record, and of how the machine is used, once each, the most serious first. */
export function cautions(context: ReportContext): CautionsSection | null {
  const { record, layout } = context;
  const called = cautionsFor(
    {
      layout,
      findings: standingFindings(knownFindings(context)),
      readings: record.readings.filter(({ at }) => context.isKnownPlace(at)),
      ...workOf(context),
    },
    'report',
  );
  if (called.length === 0) return null;
  return {
    kind: 'cautions',
    heading: 'Cautions',
    panels: called.map(({ caution, because }) => ({
      word: caution.word,
      text: caution.text,
      because: becauseOf(because, context),
    })),
  };
}
