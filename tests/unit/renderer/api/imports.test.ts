import { expect, it } from 'vitest';
import { type ImportProgress, withImportEvent } from '../../../../renderer/api/imports.ts';
import type { OfferedFile } from '../../../../shared-lib/contract/shots.ts';

const event = (done: number, file: OfferedFile | null, ended: ImportProgress['ended'] = 'no') => ({
  event: 'import' as const,
  jobId: 'j',
  visitId: 'v',
  done,
  of: 2,
  file,
  ended,
});
const taken: OfferedFile = {
  name: 'a.jpg',
  accepted: true,
  shotId: 's',
  digest: 'd',
  remark: null,
  alreadyHere: false,
};
const refused: OfferedFile = { name: 'b.mov', accepted: false, error: { code: 'photo-not-an-image', details: {} } };

it('an import is followed file by file to its end', () => {
  const jobs = [event(0, null), event(1, taken), event(2, refused), event(2, null, 'complete')].reduce(
    withImportEvent,
    [] as readonly ImportProgress[],
  );
  expect(jobs).toEqual([
    { jobId: 'j', visitId: 'v', done: 2, of: 2, accepted: [taken], refused: [refused], ended: 'complete' },
  ]);
});

it('two imports run beside each other', () => {
  const first = withImportEvent([], event(1, taken));
  const both = withImportEvent(first, { ...event(0, null), jobId: 'k' });
  expect(both.map(({ jobId, done }) => [jobId, done])).toEqual([
    ['j', 1],
    ['k', 0],
  ]);
});
