import { randomUUID } from 'node:crypto';
import { basename, join } from 'node:path';
import { app, type BrowserWindow, dialog, shell } from 'electron';
import type { z } from 'zod';
import type { Answer } from '../../shared-lib/contract/bridge.ts';
import type { OfferedPath } from '../../shared-lib/contract/envelope.ts';
import { AppError } from '../../shared-lib/contract/errors.ts';
import type { shellOperations } from '../../shared-lib/contract/shell.ts';

type ShellOperation = keyof typeof shellOperations;

type Answering<N extends ShellOperation> = (
  window: BrowserWindow,
  input: z.output<(typeof shellOperations)[N]['input']>,
) => Promise<unknown>;

export interface Dialogs {
  /** True for an operation that the shell itself answers. */
  answers(name: string): name is ShellOperation;
  answer(window: BrowserWindow, name: ShellOperation, input: unknown): Promise<Answer>;
  /** Turns paths that the mechanic dropped into one-use tokens; an empty path gets none. */
  offerForReading(paths: readonly string[]): string[];
}

/** As phones and cameras write them; the recorder looks at the bytes, not at the name. */
const photoExtensions = ['jpg', 'jpeg', 'png', 'heic', 'heif', 'webp', 'tif', 'tiff', 'avif'];

/** `offer` tells the recorder of a token before the window gets it. */
export function createDialogs(offer: (offer: OfferedPath) => void): Dialogs {
  /** What the window may have opened: only files that the mechanic named in a save dialog of this run. */
  const saved = new Set<string>();

  const tokenFor = (path: string, use: OfferedPath['for']): string => {
    const token = randomUUID();
    offer({ token, path, for: use });
    return token;
  };

  const offerForReading = (paths: readonly string[]) =>
    paths.filter((path) => path !== '').map((path) => tokenFor(path, 'read'));

  const choosePhotos = async (window: BrowserWindow) => {
    const chosen = await dialog.showOpenDialog(window, {
      title: 'Take in photos',
      properties: ['openFile', 'multiSelections'],
      filters: [
        { name: 'Photos', extensions: [...photoExtensions, ...photoExtensions.map((name) => name.toUpperCase())] },
        { name: 'All files', extensions: ['*'] },
      ],
    });
    return chosen.canceled ? null : { tokens: offerForReading(chosen.filePaths) };
  };

  const choosePdf = async (window: BrowserWindow, suggestedName: string) => {
    const chosen = await dialog.showSaveDialog(window, {
      title: 'Save as PDF',
      defaultPath: join(app.getPath('documents'), fileName(suggestedName)),
      filters: [{ name: 'PDF', extensions: ['pdf'] }],
      properties: ['showOverwriteConfirmation'],
    });
    if (chosen.canceled || !chosen.filePath) return null;
    saved.add(chosen.filePath);
    return { token: tokenFor(chosen.filePath, 'write') };
  };

  const annotationFilters = [
    { name: 'Web Annotations', extensions: ['jsonld', 'json'] },
    { name: 'All files', extensions: ['*'] },
  ];

  const saveAnnotations = async (window: BrowserWindow, suggestedName: string) => {
    const chosen = await dialog.showSaveDialog(window, {
      title: 'Write the marks to a file',
      defaultPath: join(app.getPath('documents'), fileName(suggestedName)),
      filters: annotationFilters,
      properties: ['showOverwriteConfirmation'],
    });
    return chosen.canceled || !chosen.filePath ? null : { token: tokenFor(chosen.filePath, 'write') };
  };

  const chooseAnnotations = async (window: BrowserWindow) => {
    const chosen = await dialog.showOpenDialog(window, {
      title: 'Bring in marks from a file',
      properties: ['openFile'],
      filters: annotationFilters,
    });
    const [path] = chosen.filePaths;
    return chosen.canceled || !path ? null : { token: tokenFor(path, 'read') };
  };

  const showFile = async (path: string) => {
    if (!saved.has(path)) throw new AppError('not-found', { record: 'file', id: path });
    const reason = await shell.openPath(path);
    if (reason !== '') throw new AppError('file-unreadable', { path, reason });
    return null;
  };

  const answered: { readonly [N in ShellOperation]: Answering<N> } = {
    'shell.choosePhotos': choosePhotos,
    'shell.choosePdf': (window, { suggestedName }) => choosePdf(window, suggestedName),
    'shell.saveAnnotations': (window, { suggestedName }) => saveAnnotations(window, suggestedName),
    'shell.chooseAnnotations': chooseAnnotations,
    'shell.showFile': (_window, { path }) => showFile(path),
  };

  return {
    answers: (name): name is ShellOperation => Object.hasOwn(answered, name),
    offerForReading,
    async answer(window, name, input) {
      // The schemas come with the first dialog: their library has no part in a start.
      const { shellOperations } = await import('../../shared-lib/contract/shell.ts');
      const run = answered[name] as (window: BrowserWindow, input: unknown) => Promise<unknown>;
      return checked(shellOperations[name].input, input, (parsed) => run(window, parsed));
    },
  };
}

async function checked<I extends z.ZodType>(
  schema: I,
  input: unknown,
  run: (input: z.output<I>) => Promise<unknown>,
): Promise<Answer> {
  const parsed = schema.safeParse(input);
  if (!parsed.success) {
    const issues = parsed.error.issues.map(({ path, message }) => ({ path: path.join('.'), message }));
    return { ok: false, error: { code: 'invalid-input', details: { issues } } };
  }
  try {
    return { ok: true, output: await run(parsed.data) };
  } catch (error) {
    if (error instanceof AppError) return { ok: false, error: error.toWire() };
    throw error;
  }
}

/** A name that no system takes for a folder or a device: it may come from what a machine is called. */
function fileName(suggested: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what must not be in a name
  return basename(suggested.replaceAll(/[\u0000-\u001f<>:"/\\|?*]/g, ' ').trim()) || 'report.pdf';
}
