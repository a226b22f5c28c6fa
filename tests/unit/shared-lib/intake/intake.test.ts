import { expect, it } from 'vitest';
import { arrivalCoverage, sayEarlierWork, sayFluid } from '../../../../shared-lib/intake/words.ts';
import type { Intake } from '../../../../shared-lib/model/intake.ts';
import { notebookEntries } from '../../../../shared-lib/notebook/entries.ts';
import { reportOf, scenarioSource } from '../../../recorder/reports/sample.ts';

const intake: Intake = {
  earlierWork: [
    { id: 'w1', what: 'thermostat', place: null, did: 'removed', byWhom: 'the owner', whenDone: 'last summer' },
    { id: 'w2', what: 'head gasket', place: null, did: 'changed', byWhom: '', whenDone: '' },
  ],
  fluids: [{ id: 'f1', fluid: 'coolant', level: 'low', look: 'brown', added: 'half a litre a day' }],
  photos: [{ id: 'p1', view: 'plate', shotId: 'nowhere' }],
};

it('says who did what, and does not hide that nobody knows', () => {
  expect(intake.earlierWork.map(sayEarlierWork)).toEqual([
    'thermostat: removed, by the owner, last summer',
    'head gasket: changed, nobody said by whom',
  ]);
  expect(intake.fluids.map(sayFluid)).toEqual(['coolant: low, brown, topped up: half a litre a day']);
  expect(arrivalCoverage(intake).missing).toHaveLength(7);
});

it('stands in the report beside the complaint, and in the notebook right after it', () => {
  const source = scenarioSource('s1-skid-steer-cracked-head.json');
  const record = { ...source.record, intake };
  const section = reportOf({ ...source, record }).sections.find(
    (each) => each.kind === 'rows' && each.heading.startsWith('What the owner said'),
  );
  const rows = section?.kind === 'rows' ? new Map(section.rows.map((row) => [row.label, row.paragraphs])) : new Map();
  expect(rows.get('Done before')).toEqual([
    'Thermostat: removed, by the owner, last summer.',
    'Head gasket: changed, nobody said by whom.',
  ]);
  expect(rows.get('Fluids as received')).toEqual(['Coolant: low, brown, topped up: half a litre a day.']);
  // The photo is gone: it is not said to show anything.
  expect(rows.has('On arrival')).toBe(false);
  const silent = reportOf(source).sections.flatMap((each) => (each.kind === 'rows' ? each.rows : []));
  expect(silent.map(({ label }) => label)).not.toContain('Done before');
  expect(
    notebookEntries(record)
      .slice(0, 2)
      .map(({ kind }) => kind),
  ).toEqual(['complaint', 'received']);
});
