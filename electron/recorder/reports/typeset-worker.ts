import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parentPort } from 'node:worker_threads';
import { NodeCompiler, type NodeTypstDocument } from '@myriaddreamin/typst-ts-node-compiler';
import { buildReport } from '../../../shared-lib/report/build.ts';
import { fontFamilies } from '../../../shared-lib/report/font-coverage.ts';
import { projectFile } from '../own-files.ts';
import { previewPhoto } from './preview-photos.ts';
import { splitSvg } from './split-svg.ts';
import type { CardJob, ReportJob, TypesetAnswer, TypesetJob } from './typeset-job.ts';

const assets = projectFile('assets');
const workspace = join(assets, 'report');
const main = join(workspace, 'main.typ');
const cardMain = join(workspace, 'card.typ');
/** Runs of the typesetter that its cache keeps a result for. */
const keptRuns = 4;

const compiler = NodeCompiler.create({ workspace, fontArgs: [{ fontPaths: [join(assets, 'fonts')] }] });

const shadow = (path: string, content: string | Uint8Array): void =>
  compiler.mapShadow(join(workspace, path), Buffer.from(content as Uint8Array));

/** By the first bytes; anything else has no place in the report. */
function kindOf(bytes: Uint8Array): 'jpg' | 'png' | 'webp' | null {
  const head = Buffer.from(bytes.subarray(0, 12));
  if (head[0] === 0xff && head[1] === 0xd8) return 'jpg';
  if (head.subarray(1, 4).toString('latin1') === 'PNG') return 'png';
  return head.toString('latin1', 8, 12) === 'WEBP' ? 'webp' : null;
}

/** Maps every photo that is there into the typesetter's world. What can't be read is left out: its frame says so. */
async function mapPhotos({ photoFiles, make }: TypesetJob): Promise<Map<string, string>> {
  const mapped = new Map<string, string>();
  for (const [digest, path] of photoFiles) {
    const read = readable(path);
    if (read === null || kindOf(read) === null) continue;
    const bytes = make === 'preview' ? await previewPhoto(digest, read) : read;
    const place = `photos/${digest}.${kindOf(bytes)}`;
    shadow(place, bytes);
    mapped.set(digest, `/${place}`);
  }
  return mapped;
}

function readable(path: string): Uint8Array | null {
  try {
    return readFileSync(path);
  } catch {
    return null;
  }
}

type Compiled = { readonly document: NodeTypstDocument } | { readonly message: string };

function compile(options: { mainFilePath: string } | { mainFileContent: string }): Compiled {
  const outcome = compiler.compile({ ...options, resetRead: true });
  const document = outcome.result;
  if (document !== null && !outcome.hasError()) return { document };
  const diagnostics = outcome.takeDiagnostics()?.shortDiagnostics ?? [];
  return { message: diagnostics.map((each: { message?: unknown }) => String(each.message)).join('; ') };
}

/** Whether the typesetter can decode this one picture. */
function decodes(path: string): boolean {
  return 'document' in compile({ mainFileContent: `#image(${JSON.stringify(path)}, width: 1cm)` });
}

function lay({ paper }: TypesetJob, photos: ReadonlyMap<string, string>): Compiled {
  const printing = { paper, fonts: fontFamilies, photos: Object.fromEntries(photos) };
  shadow('printing.json', JSON.stringify(printing));
  return compile({ mainFilePath: main });
}

/** A picture that begins like one but does not decode is dropped, and the report is laid again without it. */
async function document(job: TypesetJob): Promise<NodeTypstDocument> {
  const { record, ...report } = job.report;
  shadow('record.json', record.json);
  shadow('report.json', JSON.stringify({ ...report, record: { name: record.name, description: record.description } }));
  const photos = await mapPhotos(job);
  const first = lay(job, photos);
  if ('document' in first) return first.document;
  const sound = new Map([...photos].filter(([, path]) => decodes(path)));
  const second = sound.size === photos.size ? first : lay(job, sound);
  if ('document' in second) return second.document;
  throw new Error(second.message);
}

/** The same sheet on every day: its PDF carries no date. */
function cardPdf({ sheet, paper }: CardJob): Uint8Array {
  shadow('card.json', JSON.stringify({ ...sheet, paper, fonts: fontFamilies }));
  const compiled = compile({ mainFilePath: cardMain });
  if (!('document' in compiled)) throw new Error(compiled.message);
  return new Uint8Array(compiler.pdf(compiled.document, { pdfStandard: '1.7' }));
}

const sha256 = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex');

async function answer(job: ReportJob): Promise<TypesetAnswer> {
  try {
    if (job.make === 'report') return { id: job.id, report: buildReport(job.source, sha256) };
    if (job.make === 'card') return { id: job.id, pdf: cardPdf(job), pages: 1 };
    const made = await document(job);
    if (job.make === 'preview') return { id: job.id, svgs: splitSvg(compiler.plainSvg(made)) };
    // An archive PDF needs a date on its attachment; the report's own day makes the bytes repeatable.
    const { year, month, day } = job.report.date;
    const creationTimestamp = Date.UTC(year, month - 1, day) / 1000;
    const pdf = compiler.pdf(made, { pdfStandard: 'a-3a', creationTimestamp });
    return { id: job.id, pdf: new Uint8Array(pdf), pages: made.numOfPages };
  } catch (error) {
    return { id: job.id, failed: error instanceof Error ? error.message : String(error) };
  } finally {
    compiler.resetShadow();
    compiler.evictCache(keptRuns);
  }
}

/** One after the other: they share the compiler and its shadow files. */
let last: Promise<void> = Promise.resolve();
parentPort?.on('message', (job: ReportJob) => {
  last = last.then(async () => parentPort?.postMessage(await answer(job)));
});
