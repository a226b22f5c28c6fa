import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import type { GreyImage } from '../../../shared-lib/tracing/grey.ts';

/**
 * A reader of PDFs that shares no code with the writer. Every tool gets the file by its path. Some releases complain
 * of `Suspects`: they take `false`, which ISO 32000-1:2008, table 321 has as its default, for no boolean.
 */
function withFile<T>(pdf: Uint8Array, work: (path: string, folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'poppler '));
  try {
    const path = join(folder, 'report.pdf');
    writeFileSync(path, pdf);
    return work(path, folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const run = (tool: string, ...args: string[]): string =>
  execFileSync(tool, args, {
    encoding: 'utf8',
    timeout: 60_000,
    maxBuffer: 64 * 1024 * 1024,
    stdio: ['ignore', 'pipe', 'pipe'],
  });

/** One text per page, in the order in which the page is written and tagged. */
export const textOfPages = (pdf: Uint8Array): string[] =>
  withFile(pdf, (path) => run('pdftotext', '-raw', path, '-').split('\f').slice(0, -1));

export const infoOf = (pdf: Uint8Array): Record<string, string> =>
  withFile(pdf, (path) =>
    Object.fromEntries(
      run('pdfinfo', path)
        .split('\n')
        .flatMap((line) => {
          const colon = line.indexOf(':');
          return colon < 0 ? [] : [[line.slice(0, colon), line.slice(colon + 1).trim()]];
        }),
    ),
  );

/** The tree of tags, one a line. */
export const structureOf = (pdf: Uint8Array): string => withFile(pdf, (path) => run('pdfinfo', '-struct', path));

export interface PrintedImage {
  readonly page: number;
  readonly widthPx: number;
  readonly printedWidthMm: number;
  readonly encoding: string;
}

export const imagesOf = (pdf: Uint8Array): PrintedImage[] =>
  withFile(pdf, (path) =>
    run('pdfimages', '-list', path)
      .split('\n')
      .slice(2)
      .filter((line) => line.trim() !== '')
      .map((line) => {
        const fields = line.trim().split(/\s+/);
        const widthPx = Number(fields[3]);
        return {
          page: Number(fields[0]),
          widthPx,
          printedWidthMm: (widthPx / Number(fields[12])) * 25.4,
          encoding: fields[8] ?? '',
        };
      }),
  );

export const fontsOf = (pdf: Uint8Array): { name: string; embedded: boolean; unicode: boolean }[] =>
  withFile(pdf, (path) =>
    run('pdffonts', path)
      .split('\n')
      .slice(2)
      .filter((line) => line.trim() !== '')
      .map((line) => {
        const flags = /\s(yes|no)\s+(yes|no)\s+(yes|no)\s+\d+\s+\d+\s*$/.exec(line);
        return { name: line.split(' ')[0] ?? '', embedded: flags?.[1] === 'yes', unicode: flags?.[3] === 'yes' };
      }),
  );

export const attachmentOf = (pdf: Uint8Array, name: string): Buffer =>
  withFile(pdf, (path, folder) => {
    const out = join(folder, 'attached');
    run('pdfdetach', '-savefile', name, '-o', out, path);
    return readFileSync(out);
  });

/** The first page as printed, a grey level for each dot. */
export const greyPageOf = async (pdf: Uint8Array, dotsPerInch: number): Promise<GreyImage> => {
  const png = withFile(pdf, (path, folder) => {
    run('pdftoppm', '-r', String(dotsPerInch), '-gray', '-png', '-singlefile', path, join(folder, 'page'));
    return readFileSync(join(folder, 'page.png'));
  });
  const { data, info } = await sharp(png).grayscale().raw().toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, left: 0, top: 0, data: Float32Array.from(data) };
};
