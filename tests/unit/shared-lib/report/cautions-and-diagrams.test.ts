import { expect, test } from 'vitest';
import type { Report, ReportSection } from '../../../../shared-lib/report/model.ts';
import { changedFindings, reportOf, scenarioSource } from '../../../recorder/reports/sample.ts';

function section<K extends ReportSection['kind']>(report: Report, kind: K): Extract<ReportSection, { kind: K }> {
  const found = report.sections.find((each) => each.kind === kind);
  if (!found) throw new Error(`no section ${kind}`);
  return found as Extract<ReportSection, { kind: K }>;
}

const backhoe = scenarioSource('s6-backhoe-visit-and-return.json', 1);

// The worked case of the handbook's backhoe, second visit: what its report must warn of.
test('the open findings are warned of, the most serious first, each with what called it', () => {
  const { panels } = section(reportOf(backhoe), 'cautions');
  expect(panels.map(({ word, because }) => [word, because])).toEqual([
    ['DANGER', 'Because of findings 1 and 3.'],
    ['WARNING', 'Because of finding 1.'],
    ['WARNING', 'Because of finding 2.'],
    ['NOTICE', 'Because of finding 4.'],
  ]);
});

test('every ranked finding stands on a drawing with its tag and its place in words; the numbering is printed', () => {
  const { blocks, numbering } = section(reportOf(backhoe), 'diagrams');
  const shown = blocks.flatMap(({ tags }) => tags.map(({ tag }) => tag.number)).sort((a, b) => a - b);
  expect(shown).toEqual([1, 2, 3, 4, 5]);
  const legend = blocks.flatMap((block) => block.legend.map(({ words }) => words));
  expect(legend).toContain('Left boom hose, 340 mm from the pump end');
  expect(legend).toContain('Right loader tower, 30 mm from pin 2');
  expect(numbering).toContain('counted from the fan end');
});

test('a machine without findings has neither', () => {
  const nothing = { ...backhoe, record: { ...backhoe.record, findings: [], readings: [] } };
  const kinds = reportOf(changedFindings(nothing, () => ({}))).sections.map(({ kind }) => kind);
  expect(kinds).not.toContain('cautions');
  expect(kinds).not.toContain('diagrams');
});

test.each(['FRM/NO-SUCH-PART', 'not a place at all'])('%s is left out, and the report still made', (location) => {
  const findings = backhoe.record.findings.map((finding) =>
    finding.number === 2 ? { ...finding, locations: [location] } : finding,
  );
  const { blocks } = section(reportOf({ ...backhoe, record: { ...backhoe.record, findings } }), 'diagrams');
  const shown = blocks.flatMap(({ tags }) => tags.map(({ tag }) => tag.number));
  expect(shown.sort((a, b) => a - b)).toEqual([1, 3, 4, 5]);
});
