import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { greyOf, readUprightPixels } from '../../../electron/recorder/measuring/pixels.ts';
import type { XY } from '../../../shared-lib/geometry/spaces.ts';
import type { GreyImage } from '../../../shared-lib/tracing/grey.ts';

/** Photographs with a crack's true line, kept outside the project for their licences. */
const folder = resolve(import.meta.dirname, '../../../../shared/data');
export const cracksFolder = join(folder, 'cracks');
export const hasCracks = existsSync(cracksFolder);

type Pair = readonly [number, number];
interface CrackFile {
  readonly id: string;
  readonly image: string;
  readonly source: string;
  readonly start: Pair;
  readonly end: Pair;
  readonly roughStart: Pair;
  readonly roughEnd: Pair;
  readonly truth: readonly Pair[];
}

export interface CrackCase {
  readonly id: string;
  readonly source: string;
  readonly path: string;
  readonly exact: readonly [XY, XY];
  readonly rough: readonly [XY, XY];
  readonly truth: readonly XY[];
  readonly grey: GreyImage;
}

const point = ([x, y]: Pair): XY => ({ x, y });

export async function readCracks(): Promise<CrackCase[]> {
  const names = readdirSync(cracksFolder).filter((name) => /^dev-.*\.json$/.test(name));
  const cases: CrackCase[] = [];
  for (const name of names.sort()) {
    const file = JSON.parse(readFileSync(join(cracksFolder, name), 'utf8')) as CrackFile;
    const path = join(cracksFolder, file.image);
    cases.push({
      id: file.id,
      source: file.source,
      path,
      exact: [point(file.start), point(file.end)],
      rough: [point(file.roughStart), point(file.roughEnd)],
      truth: file.truth.map(point),
      grey: greyOf(await readUprightPixels(path)),
    });
  }
  return cases;
}

interface LargeFile {
  readonly file: string;
  readonly traces?: readonly {
    readonly case: string;
    readonly start: Pair;
    readonly end: Pair;
    readonly truth: readonly Pair[];
  }[];
}

export interface LargeTrace {
  readonly id: string;
  readonly clicks: readonly [XY, XY];
  readonly truth: readonly XY[];
}

/** The large pictures that carry traces, one at a time: each takes a few hundred megabytes. */
export async function* readLarge(): AsyncGenerator<{ file: string; grey: GreyImage; traces: LargeTrace[] }> {
  const files = JSON.parse(readFileSync(join(folder, 'large/manifest.json'), 'utf8')) as readonly LargeFile[];
  for (const { file, traces = [] } of files) {
    if (traces.length === 0) continue;
    yield {
      file,
      grey: greyOf(await readUprightPixels(join(folder, 'large', file))),
      traces: traces.map((trace) => ({
        id: trace.case,
        clicks: [point(trace.start), point(trace.end)],
        truth: trace.truth.map(point),
      })),
    };
  }
}
