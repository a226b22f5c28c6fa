import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Decoder } from '../../../electron/recorder/photos/decoder.ts';
import { PhotoStore } from '../../../electron/recorder/photos/store.ts';
import { takeIn } from '../../../electron/recorder/photos/take-in.ts';
import { differenceOf, filesUnder, fixtureFolder, type TestRoom } from '../../recorder/photos/photo-room.ts';
import { judge, readManifest } from './ingest-set.ts';

const sharedData = join(import.meta.dirname, '../../../../shared/data');
const archive = join(sharedData, 'ingest.tar');
const fullManifest = join(sharedData, 'ingest-manifest.json');
const isFullSetHere = existsSync(archive) && existsSync(fullManifest);

const openRoom = (): TestRoom => {
  const dataFolder = mkdtempSync(join(tmpdir(), 'ingest-'));
  return { store: new PhotoStore(dataFolder), decoder: new Decoder(), dataFolder };
};

const closeRoom = ({ decoder, dataFolder }: TestRoom): void => {
  decoder.close();
  rmSync(dataFolder, { recursive: true, force: true });
};

/** Nothing half done may be left, whatever was offered; and nothing may have landed outside. */
const expectTidy = ({ dataFolder }: TestRoom): void => {
  expect(readdirSync(join(dataFolder, 'originals', 'incoming'))).toEqual([]);
  expect(readdirSync(join(dataFolder, 'derivatives', 'making'))).toEqual([]);
  expect(readdirSync(dataFolder).sort()).toEqual(['derivatives', 'originals']);
  for (const file of filesUnder(join(dataFolder, 'originals'))) expect(file).toMatch(/^[0-9a-f]{2}\/[0-9a-f]{64}$/);
};

describe('the files kept beside the tests', () => {
  const cases = readManifest(join(fixtureFolder, 'manifest.json'));
  let room: TestRoom;
  beforeAll(() => {
    room = openRoom();
  });
  afterAll(() => closeRoom(room));

  it('has a licence and a source for each file, and each file for a line', () => {
    const listed = cases.map(({ file }) => file).sort();
    const there = filesUnder(fixtureFolder).filter((name) => name !== 'manifest.json' && name !== 'LICENCES.md');
    expect(there).toEqual(listed);
    for (const one of cases) expect(one).toMatchObject({ source: expect.any(String), licence: expect.any(String) });
  });

  it.for(cases)('$file: $what', async (one) => {
    await judge(room, fixtureFolder, one);
  });

  it('leaves nothing half done', () => expectTidy(room));
});

describe.skipIf(!isFullSetHere)('the full set of good, odd and hostile files', () => {
  // Read only where it is present; elsewhere the count below says that it was skipped.
  const cases = isFullSetHere ? readManifest(fullManifest) : [];
  let folder = '';
  let room: TestRoom;
  const outcomes: string[] = [];
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'ingest-set-'));
    execFileSync('tar', ['-xf', archive, '-C', folder]);
    room = openRoom();
  });
  afterAll(() => {
    closeRoom(room);
    rmSync(folder, { recursive: true, force: true });
    const accepted = outcomes.filter((outcome) => outcome === 'accepted').length;
    process.stdout.write(
      `full photo set: ${outcomes.length} of ${cases.length} files ran, ${accepted} accepted, ${outcomes.length - accepted} refused, ${cases.length - outcomes.length} skipped\n`,
    );
  });

  it.for(cases)('$file: $what', async (one) => {
    outcomes.push(await judge(room, folder, one));
  });

  it('shows all nine turns of one landscape the same way up', async () => {
    const thumbs: string[] = [];
    for (let turn = 0; turn <= 8; turn += 1) {
      const { original } = await takeIn(room, join(folder, `valid/Landscape_${turn}.jpg`), `Landscape_${turn}`);
      thumbs.push(room.store.derivativePath(original.digest, 'thumb'));
    }
    const [first = '', ...others] = thumbs;
    // The nine differ by a digit in the middle; a wrong turn or mirroring differs by more than 50.
    for (const other of others) expect(await differenceOf(first, other)).toBeLessThan(12);
  });

  it('leaves nothing half done', () => expectTidy(room));
});

if (!isFullSetHere) {
  process.stdout.write('full photo set: 0 files ran, all skipped: it is not here\n');
  it.skip('the full set of good, odd and hostile files is not here');
}
