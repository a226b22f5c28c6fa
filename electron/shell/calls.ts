import { randomUUID } from 'node:crypto';
import { BrowserWindow, ipcMain, type WebContents } from 'electron';
import type { Answer } from '../../shared-lib/contract/bridge.ts';
import type { RecorderEvent } from '../../shared-lib/contract/events.ts';
import type { AskedAhead } from './asked-ahead.ts';
import { channels } from './channels.ts';
import type { Dialogs } from './dialogs.ts';
import type { RecorderProcess } from './recorder-process.ts';
import { isOurs } from './security.ts';

const refused = (code: 'not-ours' | 'unknown-operation'): Answer => ({ ok: false, error: { code, details: {} } });

/** Relays the window's calls. Only the sender and the shape are checked here: the recorder validates what is asked. */
export function setupCalls(recorder: RecorderProcess, dialogs: Dialogs, ahead: AskedAhead): void {
  ipcMain.handle(channels.call, async (event, name: unknown, input: unknown): Promise<Answer> => {
    const window = BrowserWindow.fromWebContents(event.sender);
    if (!isOurs(event) || window === null) return refused('not-ours');
    if (typeof name !== 'string') return refused('unknown-operation');
    if (dialogs.answers(name)) return dialogs.answer(window, name, input);
    const known = await ahead.take(name, input);
    return known ?? recorder.call({ windowId: windowIdOf(event.sender), name, input });
  });

  ipcMain.handle(channels.offer, (event, paths: unknown): string[] => {
    if (!isOurs(event) || !Array.isArray(paths)) return [];
    return dialogs.offerForReading(paths.filter((path) => typeof path === 'string'));
  });
}

export function tellWindows(event: RecorderEvent): void {
  for (const window of BrowserWindow.getAllWindows()) window.webContents.send(channels.event, event);
}

const windowIds = new WeakMap<WebContents, string>();

/** Undo reaches as far back as its window was opened, so no two windows may ever share an id. */
function windowIdOf(contents: WebContents): string {
  const id = windowIds.get(contents) ?? randomUUID();
  windowIds.set(contents, id);
  return id;
}
