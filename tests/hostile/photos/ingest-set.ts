import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect } from 'vitest';
import { type TakenIn, takeIn } from '../../../electron/recorder/photos/take-in.ts';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import { digestOfFile, type TestRoom } from '../../recorder/photos/photo-room.ts';

/** One line of a manifest: a picture file and what must happen to it. */
export interface IngestCase {
  readonly file: string;
  readonly what: string;
  readonly expect: 'accept' | 'refuse';
  readonly alsoOk?: string;
  readonly width?: number | null;
  readonly height?: number | null;
  readonly gps?: boolean;
  readonly mustNotContain?: readonly string[];
}

export const readManifest = (path: string): IngestCase[] => JSON.parse(readFileSync(path, 'utf8')) as IngestCase[];

const mostMs = 10_000;
const mostBytes = 1_500_000_000;

/** The highest resident memory that this process's children have had so far. */
export const peakOfChildrenBytes = (): number => {
  if (process.platform !== 'linux') return 0;
  const children = readFileSync(`/proc/${process.pid}/task/${process.pid}/children`, 'utf8').trim().split(' ');
  const peaks = children.filter(Boolean).map((pid) => {
    try {
      return Number(/^VmHWM:\s+(\d+) kB/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1] ?? 0) * 1024;
    } catch {
      return 0;
    }
  });
  return Math.max(0, ...peaks);
};

/** JPEG segments that carry the picture itself, by marker: ISO/IEC 10918-1 table B.1, and the JFIF header of ISO/IEC 10918-5. */
const pictureSegments: Readonly<Record<number, string>> = {
  224: 'JFIF',
  219: 'DQT',
  192: 'SOF',
  194: 'SOF',
  196: 'DHT',
  221: 'DRI',
};

/** The segments before the scan; anything that could carry words, places or an old preview is 'strange', as is a tail. */
const segmentsOf = (jpeg: Buffer): string[] => {
  const segments: string[] = [];
  let at = 2;
  for (let marker = jpeg[at + 1]; marker !== 0xda && at < jpeg.length; marker = jpeg[at + 1]) {
    segments.push(pictureSegments[marker ?? 0] ?? 'strange');
    at += 2 + jpeg.readUInt16BE(at + 2);
  }
  // In a scan 0xff is followed by 0 or a restart marker, so the first end marker is the end.
  return jpeg.indexOf(Buffer.from([0xff, 0xd9]), at) === jpeg.length - 2 ? segments : [...segments, 'strange'];
};

const checkDerivatives = async (room: TestRoom, one: IngestCase, { original }: TakenIn): Promise<void> => {
  for (const [kind, edge] of [
    ['thumb', 360],
    ['screen', 2048],
  ] as const) {
    const path = room.store.derivativePath(original.digest, kind);
    const about = await sharp(path).metadata();
    const shrink = Math.min(1, edge / Math.max(original.width, original.height));
    expect(about.format).toBe('jpeg');
    expect(Math.abs(about.width - original.width * shrink), `${kind} width`).toBeLessThanOrEqual(1);
    expect(Math.abs(about.height - original.height * shrink), `${kind} height`).toBeLessThanOrEqual(1);
    expect([about.exif, about.xmp, about.iptc, about.icc, about.comments], `${kind} metadata`).toEqual(
      Array(5).fill(undefined),
    );
    const bytes = readFileSync(path);
    expect(segmentsOf(bytes), `${kind} segments`).toEqual(expect.not.arrayContaining(['strange']));
    for (const secret of one.mustNotContain ?? [])
      expect(bytes.includes(secret), `${kind} holds ${secret}`).toBe(false);
  }
};

const checkAccepted = async (room: TestRoom, one: IngestCase, source: string, taken: TakenIn): Promise<void> => {
  const { original } = taken;
  if (one.expect === 'refuse') {
    const mayBeAccepted = one.alsoOk?.startsWith('accept') ?? false;
    expect(mayBeAccepted, `accepted: ${one.what}`).toBe(true);
    if (one.alsoOk?.includes('damaged')) expect(original.remark).toContain('file is damaged');
  }
  if (typeof one.width === 'number') expect([original.width, original.height]).toEqual([one.width, one.height]);
  if (/two-page|animated|3 images/.test(one.what)) expect(original.remark).toMatch(/(first|main) .* of \d/);
  const kept = room.store.originalPath(original.digest);
  expect(digestOfFile(kept)).toBe(original.digest);
  expect(readFileSync(kept).equals(readFileSync(source))).toBe(true);
  await checkDerivatives(room, one, taken);
};

const checkRefused = (one: IngestCase, cause: unknown): void => {
  // Anything but a refusal in the closed vocabulary is a bug, whatever was expected of the file.
  if (!(cause instanceof AppError)) throw cause;
  expect(one.expect === 'refuse' || one.alsoOk === 'refuse', `refused ${one.what}: ${cause.message}`).toBe(true);
  expect(cause.code).toMatch(/^photo-/);
  expect(cause.details).not.toMatchObject({ why: 'decoder-crashed' });
};

/** Takes one file in and holds the outcome against the manifest. @returns what became of it */
export const judge = async (room: TestRoom, folder: string, one: IngestCase): Promise<'accepted' | 'refused'> => {
  const source = join(folder, one.file);
  const began = performance.now();
  const outcome = await takeIn(room, source, one.file).then(
    (taken) => ({ taken }),
    (cause: unknown) => ({ cause }),
  );
  expect(performance.now() - began).toBeLessThan(mostMs);
  expect(peakOfChildrenBytes()).toBeLessThan(mostBytes);
  if ('cause' in outcome) {
    checkRefused(one, outcome.cause);
    return 'refused';
  }
  await checkAccepted(room, one, source, outcome.taken);
  return 'accepted';
};
