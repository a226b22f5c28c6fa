import { join } from 'node:path';
import { expect, it } from 'vitest';
import { storiesOf } from '../../../shared-lib/chains/stories.ts';
import { tellStory } from '../../../shared-lib/chains/tell.ts';
import { suspicionTable } from '../../../shared-lib/suspicions/table.ts';
import { openTestRecorder } from '../../support/test-recorder.ts';

const project = join(import.meta.dirname, '../../..');
const cases = 'tests/reference/scenarios';

const applied = async (file: string) => {
  const test = openTestRecorder();
  test.recorder.offer({ token: file, path: join(project, file), for: 'read' });
  const { visits } = await test.call('scenario.apply', { token: file });
  return test.call('visit.get', { id: Object.values(visits)[0] ?? '' });
};

// Source: the handbook's S1, its trap: two negative gas tests, good compression and low leakage must not close the crack
// suspicion; the hose was the first suspicion, and its conclusion is superseded, not forgotten.
it('two gas tests, compression and leakage leave the crack open; the hose stays with what turned it', async () => {
  const record = await applied(`${cases}/s1-skid-steer-cracked-head.json`);
  const [hose, crack] = suspicionTable(record).columns;
  expect(hose).toMatchObject({ state: 'given-up', counts: { for: 1, against: 1, 'cannot tell': 0 } });
  expect(crack).toMatchObject({ state: 'open', counts: { for: 2, against: 0, 'cannot tell': 4 } });
  const gas = record.readings.filter(({ sheet }) => sheet === 'MS-09');
  expect(gas).toHaveLength(2);
  for (const { id } of gas) expect(crack?.cells.get(id)?.limit).toMatch(/^does not rule out .* opens hot$/);
  const times = [hose, crack].flatMap((column) => [...(column?.cells.values() ?? [])].map(({ atMs }) => atMs ?? 0));
  const day = Date.parse('2026-03-03T00:00:00Z');
  expect(times.every((atMs) => atMs > day && atMs < day + 24 * 3_600_000)).toBe(true);
});

// Source: the handbook's S5: plain bore water is the root of the pitted liners, and the hole of the suspected bearing damage.
it('the bore water is told as the one beginning, the bearing damage as what is only suspected', async () => {
  const record = await applied(`${cases}/s5-irrigation-liner-pinhole.json`);
  const [story, ...others] = storiesOf(record);
  expect(others).toEqual([]);
  const water = record.findings.find(({ defect }) => defect === 'wrongfluid');
  expect(story?.roots).toEqual([water?.id]);
  const told = story === undefined ? '' : tellStory(story).join(' ');
  expect(told).toMatch(/^It begins with finding 2, coolant: wrong fluid/);
  expect(told).toMatch(/Finding 1 is suspected to have led to finding 5, .*\(suspected\)\./);
});

// Source: the handbook's S3: a suspected root (flakes) stands before its consequence, and the drift comes of the scored barrel.
it('flakes, barrel and drift are one chain in that order', async () => {
  const [story] = storiesOf(await applied(`${cases}/s3-dozer-blade-drops.json`));
  expect(story?.findings.map(({ finding }) => finding.number)).toEqual([3, 2, 1]);
});

it('a case tells how the machine was received, and what a link rests on by name', async () => {
  const record = await applied('assets/demo/2-lift-truck.json');
  expect(record.intake?.earlierWork.map(({ what }) => what)).toEqual(['thermostat, three times', 'pressure cap']);
  expect(record.intake?.fluids.map(({ fluid, level }) => [fluid, level])).toEqual([
    ['engine-oil', 'at-mark'],
    ['coolant', 'low'],
    ['hydraulic-oil', 'low'],
  ]);
  for (const { shownBy } of record.links) expect(shownBy?.length).toBeGreaterThan(0);
});
