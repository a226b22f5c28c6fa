import type { CautionCall, CautionRecord } from '../../cautions/calls.ts';
import { cautionsFor } from '../../cautions/cautions-for.ts';
import { speakBecause } from '../../cautions/speak-because.ts';
import { standingFindings } from '../../ranking/to-rankable.ts';
import type { ReportContext } from '../context.ts';
import type { CautionsSection } from '../model.ts';

/** Findings by their numbers, since their tags stand all over the report; everything else in words. */
function becauseOf(calls: readonly CautionCall[], context: ReportContext): string {
  const findings = context.record.findings;
  const numbers = calls
    .flatMap((call) => (call.by === 'finding' ? (findings.find(({ id }) => id === call.findingId)?.number ?? []) : []))
    .sort((a, b) => a - b);
  const named =
    numbers.length === 0 ? [] : [`${numbers.length === 1 ? 'finding' : 'findings'} ${listed(numbers.map(String))}`];
  const others = calls
    .filter(({ by }) => by !== 'finding')
    .map((call) => speakBecause(call, findings, context.layout).toLowerCase());
  return `Because of ${listed([...named, ...new Set(others)])}.`;
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

/** The work of the visit, and of the choice that was taken with what that takes away. */
function workOf({ choices }: ReportContext['record']): Pick<CautionRecord, 'steps' | 'chosen'> {
  const chosen = choices?.choices.find((choice) => choice.chosen);
  const fixed = chosen?.dispositions.filter(({ is }) => is === 'fixed').map(({ findingId }) => findingId);
  return {
    steps: choices?.steps ?? [],
    chosen: chosen === undefined ? null : { steps: chosen.steps, fixes: new Set(fixed) },
  };
}

/** The cautions of what is still open and of how the machine is used, once each, the most serious first. */
export function cautions(context: ReportContext): CautionsSection | null {
  const { record, layout } = context;
  const called = cautionsFor(
    {
      layout,
      findings: standingFindings(record.findings).map((finding) => ({
        ...finding,
        locations: finding.locations.filter(context.isKnownPlace),
      })),
      readings: record.readings.filter(({ at }) => context.isKnownPlace(at)),
      ...workOf(record),
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
