import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { addLoader, freshFolder, openTestRecorder } from '../../support/test-recorder.ts';
import { attachmentOf, infoOf, textOfPages } from './poppler.ts';

const withFinding = async () => {
  const bench = openTestRecorder();
  const { visitId } = await addLoader(bench);
  await bench.call('finding.add', {
    visitId,
    kind: 'condition',
    defect: 'crack',
    locations: ['ENG/HD.1/EVS.3.1'],
    words: 'crack from the seat',
    state: 'suspected',
    methods: ['V'],
  });
  return { ...bench, visitId };
};

test('the preview shows the pages and what is still missing', async () => {
  const { call, visitId } = await withFinding();
  const { pages, missing } = await call('report.preview', { visitId });
  expect(pages.length).toBeGreaterThan(1);
  for (const page of pages) expect(page).toMatch(/^<svg /);
  expect(missing.map(({ at }) => at.place)).toEqual(expect.arrayContaining(['shop', 'finding']));
});

test('the draft is written whole where the dialog said, and answers with its digest', async () => {
  const { call, recorder, visitId } = await withFinding();
  const folder = freshFolder();
  const path = join(folder, 'Übergabe 1.pdf');
  writeFileSync(path, 'an older file');
  recorder.offer({ token: 'paper', path, for: 'write' });
  const printed = await call('report.print', { visitId, token: 'paper', paper: 'us-letter' });
  const bytes = readFileSync(path);
  expect(printed).toEqual({
    path,
    pages: expect.any(Number),
    digest: createHash('sha256').update(bytes).digest('hex'),
  });
  expect(infoOf(bytes).Pages).toBe(String(printed.pages));
  expect(readdirSync(folder)).toEqual(['Übergabe 1.pdf']);
  expect(textOfPages(bytes)[0]?.replaceAll(/\s+/g, ' ')).toContain('crack (not proven).');
  const attached = JSON.parse(attachmentOf(bytes, 'record.json').toString('utf8'));
  expect(attached.record.visit.id).toBe(visitId);
});

test('a draft changes nothing: no number, no journal entry', async () => {
  const { call, recorder, visitId } = await withFinding();
  const before = await call('journal.of', { visitId });
  recorder.offer({ token: 'paper', path: join(freshFolder(), 'draft.pdf'), for: 'write' });
  await call('report.print', { visitId, token: 'paper' });
  expect(await call('journal.of', { visitId })).toEqual(before);
});

test('a token is good for one writing, and a place that can not be written says so', async () => {
  const { call, recorder, visitId } = await withFinding();
  const folder = join(freshFolder(), 'taken.pdf');
  mkdirSync(folder);
  writeFileSync(join(folder, 'inside'), '');
  recorder.offer({ token: 'once', path: folder, for: 'write' });
  await expect(call('report.print', { visitId, token: 'once' })).rejects.toMatchObject({
    message: 'file-unwritable',
  });
  await expect(call('report.print', { visitId, token: 'once' })).rejects.toMatchObject({ message: 'token-spent' });
});

test('a visit that is not there has no report', async () => {
  const { call } = openTestRecorder();
  await expect(call('report.preview', { visitId: 'nowhere' })).rejects.toMatchObject({ message: 'not-found' });
});
