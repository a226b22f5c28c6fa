import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { flushCompileCache } from 'node:module';
import { join } from 'node:path';
import { parentPort } from 'node:worker_threads';
import { NodeCompiler, type NodeTypstDocument } from '@myriaddreamin/typst-ts-node-compiler';
import { buildReport } from '../../../shared-lib/report/build.ts';
import { fontFamilies } from '../../../shared-lib/report/font-coverage.ts';
import { projectFile } from '../own-files.ts';
import { jpegFrame } from './jpeg-frame.ts';
import { linkedPhoto, withPhotoAddresses } from './linked-photo.ts';
import { splitSvg } from './split-svg.ts';
import type { CardJob, ReportJob, TypesetAnswer, TypesetJob } from './typeset-job.ts';

const assets = projectFile('assets');
const workspace = join(assets, 'report');
const main = join(workspace, 'main.typ');
const cardMain = join(workspace, 'card.typ');
/** Runs of the typesetter that its cache keeps a result for. */
const keptRuns = 4;

const compiler = NodeCompiler.create({ workspace, fontArgs: [{ fontPaths: [join(assets, 'fonts')] }] });

const shadow = (path: string, content: string | Buffer): void =>
  compiler.mapShadow(join(workspace, path), typeof content === 'string' ? Buffer.from(content) : content);

/**
 * Maps every photo that is there into the typesetter's world. What can't be read, or is no JPEG that a page can take over,
 * is left out: its frame says so.
 */
function mapPhotos({ photoFiles }: TypesetJob): Record<string, string> {
  const places: Record<string, string> = {};
  for (const [digest, path] of photoFiles) {
    const bytes = readable(path);
    const frame = bytes === null ? null : jpegFrame(bytes);
    if (bytes === null || frame === null) continue;
    shadow(`photos/${digest}.jpg`, bytes);
    shadow(`photos/${digest}.svg`, linkedPhoto(digest, frame));
    places[digest] = `/photos/${digest}.svg`;
  }
  return places;
}

function readable(path: string): Buffer | null {
  try {
    return readFileSync(path);
  } catch {
    return null;
  }
}

function compile(mainFilePath: string): NodeTypstDocument {
  const outcome = compiler.compile({ mainFilePath, resetRead: true });
  const document = outcome.result;
  if (document !== null && !outcome.hasError()) return document;
  const diagnostics = outcome.takeDiagnostics()?.shortDiagnostics ?? [];
  throw new Error(diagnostics.map((each: { message?: unknown }) => String(each.message)).join('; '));
}

function document(job: TypesetJob): NodeTypstDocument {
  const { record, title, author, subject, date, language, sections, ...edge } = job.report;
  const { name, description } = record;
  shadow('record.json', record.json);
  shadow('about.json', JSON.stringify({ title, author, subject, date }));
  shadow('page-edge.json', JSON.stringify(edge));
  shadow('report.json', JSON.stringify({ language, sections, record: { name, description } }));
  shadow('printing.json', JSON.stringify({ paper: job.paper, fonts: fontFamilies, photos: mapPhotos(job) }));
  return compile(main);
}

/** The same sheet on every day: its PDF carries no date. */
function cardPdf({ sheet, paper }: CardJob): Uint8Array<ArrayBuffer> {
  shadow('card.json', JSON.stringify({ ...sheet, paper, fonts: fontFamilies }));
  return new Uint8Array(compiler.pdf(compile(cardMain), { pdfStandard: '1.7' }));
}

const sha256 = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex');

function answerTo(job: ReportJob): TypesetAnswer {
  const { id } = job;
  try {
    if (job.make === 'report') return { id, report: buildReport(job.source, sha256) };
    if (job.make === 'card') return { id, pdf: cardPdf(job), pages: 1 };
    const made = document(job);
    if (job.make === 'preview') return { id, svgs: splitSvg(withPhotoAddresses(compiler.plainSvg(made))) };
    // An archive PDF needs a date on its attachment; the report's own day makes the bytes repeatable.
    const { year, month, day } = job.report.date;
    const creationTimestamp = Date.UTC(year, month - 1, day) / 1000;
    const pdf = compiler.pdf(made, { pdfStandard: 'a-3a', creationTimestamp });
    return { id, pdf: new Uint8Array(pdf), pages: made.numOfPages };
  } catch (error) {
    return { id, failed: error instanceof Error ? error.message : String(error) };
  }
}

parentPort?.on('message', (job: ReportJob) => {
  const answer = answerTo(job);
  // A PDF is handed over, not copied.
  parentPort?.postMessage(answer, 'pdf' in answer ? [answer.pdf.buffer] : []);
  compiler.resetShadow();
  compiler.evictCache(keptRuns);
});
// The next thread finds its code compiled, however this one ends. It is asked for by NODE_COMPILE_CACHE, else does nothing.
setTimeout(flushCompileCache, 2_000).unref();
