import { renderToStaticMarkup } from 'react-dom/server';
import { expect, it } from 'vitest';
import { FindingCautions } from '../../../../renderer/cautions/FindingCautions.tsx';
import type { VisitRecord } from '../../../../shared-lib/contract/visits.ts';
import type { Outcome } from '../../../../shared-lib/work/records.ts';
import { workOf } from '../../../../shared-lib/work/work-of.ts';
import { scenarioSource } from '../../../recorder/reports/sample.ts';

const { record } = scenarioSource('s6-backhoe-visit-and-return.json', 1);
const hose = record.findings.find(({ number }) => number === 1);

/** The visit with one piece of work on the hose. */
function worked(outcome: Outcome, because = ''): VisitRecord {
  const { visit, layout, findings, links, proofs, scope, readings, standing } = record;
  const work = workOf({
    input: { visit, layout: layout.layout, findings, links, proofs, scope, readings, units: 'metric' },
    standing,
    handOver: null,
    choices: [],
    decisions: [],
    items: [
      {
        id: 'w1',
        visitId: visit.id,
        findingId: hose?.id ?? '',
        words: '',
        outcome,
        because,
        writtenAtMs: 0,
        parts: [],
        proofs: [],
      },
    ],
  });
  return { ...record, work };
}

function shown(of: VisitRecord): string {
  if (hose === undefined) throw new Error('the worked case has a first finding');
  return renderToStaticMarkup(<FindingCautions finding={hose} record={of} />);
}

it('the card warns as found, says what remains, and is silent of what is mended', () => {
  expect(shown(record)).toContain('Never go under a part');
  expect(shown(record)).not.toContain('This finding is');
  const partly = shown(worked('partly', 'no clamp in the shop'));
  expect(partly).toContain('Never go under a part');
  expect(partly).toContain('This finding is mended in part: no clamp in the shop.');
  const mended = shown(worked('done'));
  expect(mended).not.toContain('Never go under a part');
  expect(mended).toContain('Mended in this visit');
});
