import type { ChildProcess } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { _electron, type ElectronApplication, type Page } from '@playwright/test';
import type { Bridge } from '../../../shared-lib/contract/bridge.ts';
import type { InputOf, OperationName, OutputOf } from '../../../shared-lib/contract/operations.ts';
import { isAlive, recorderOf, until } from './processes.ts';

export const project = resolve(import.meta.dirname, '../../..');

export interface WindowSize {
  readonly width: number;
  readonly height: number;
}

/** The running program: its window, its recorder, and the hands that a test needs besides mouse and keyboard. */
export class Program {
  readonly app: ElectronApplication;
  readonly page: Page;
  readonly dataFolder: string;
  readonly recorderPid: number;
  readonly #shell: ChildProcess;
  readonly #errors: string[] = [];
  readonly #allowed: RegExp[] = [];

  private constructor(app: ElectronApplication, page: Page, dataFolder: string, recorderPid: number) {
    this.app = app;
    // Kept, because Playwright knows it no more once it is closed.
    this.#shell = app.process();
    this.page = page;
    this.dataFolder = dataFolder;
    this.recorderPid = recorderPid;
  }

  /**
   * Opens the program on `folder/record`, with its settings in `folder/settings`: nothing of a test is left in the
   * account's own folders, and a second launch on the same folder finds what the first one left.
   */
  static async launch(folder: string, size: WindowSize | null): Promise<Program> {
    const dataFolder = join(folder, 'record');
    const settings = join(folder, 'settings');
    mkdirSync(settings, { recursive: true });
    const app = await _electron.launch({
      cwd: project,
      args: ['.', ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []), '--data', dataFolder],
      env: environment(settings),
    });
    try {
      const page = await app.firstWindow({ timeout: 90_000 });
      const recorderPid = await until('the recorder is started', () => recorderOf(app.process().pid));
      const program = new Program(app, page, dataFolder, recorderPid);
      program.#listenForErrors();
      if (size) await program.resize(size);
      await page.waitForLoadState();
      return program;
    } catch (error) {
      // Nobody else knows of it yet.
      app.process().kill('SIGKILL');
      throw error;
    }
  }

  /** The page's own size, without title bar and menu. */
  async resize(size: WindowSize): Promise<void> {
    await this.app.evaluate(({ BrowserWindow }, { width, height }) => {
      const [window] = BrowserWindow.getAllWindows();
      window?.setMinimumSize(0, 0);
      window?.setContentSize(width, height);
    }, size);
    await this.page.waitForFunction(({ width, height }) => innerWidth === width && innerHeight === height, size);
  }

  /** Asks the recorder as the window would; throws on a refusal. For setting a scene, not for what a test is about. */
  async call<N extends OperationName>(name: N, input: InputOf<N>): Promise<OutputOf<N>> {
    const answer = await this.page.evaluate(
      ([name, input]) => (window as unknown as { witness: Bridge }).witness.call(name, input),
      [name, input] as const,
    );
    if (!answer.ok) throw new Error(`${name}: ${answer.error.code} ${JSON.stringify(answer.error.details)}`);
    return answer.output as OutputOf<N>;
  }

  /** The next open dialogs answer with these files; none at all is the mechanic closing the dialog. */
  async chooseFiles(paths: readonly string[]): Promise<void> {
    await this.app.evaluate(
      ({ dialog }, filePaths) => {
        dialog.showOpenDialog = async () => ({ canceled: filePaths.length === 0, filePaths });
      },
      [...paths],
    );
  }

  /** The next save dialogs answer with this file; null is the mechanic closing the dialog. */
  async saveAs(path: string | null): Promise<void> {
    await this.app.evaluate(({ dialog }, filePath) => {
      dialog.showSaveDialog = async () => ({ canceled: filePath === null, filePath: filePath ?? '' });
    }, path);
  }

  /** Picks an item of the menu by its label, as the mechanic sees it. */
  async pickFromMenu(label: string): Promise<void> {
    const isFound = await this.app.evaluate(({ Menu, BrowserWindow }, label) => {
      const items = Menu.getApplicationMenu()?.items.flatMap((menu) => menu.submenu?.items ?? []) ?? [];
      const item = items.find((item) => item.label === label);
      item?.click(undefined, BrowserWindow.getAllWindows()[0], undefined);
      return item !== undefined;
    }, label);
    if (!isFound) throw new Error(`The menu has no item ${label}.`);
  }

  /** Writes `test-results/pictures/NAME.png`, once fonts and photos are there. */
  async picture(name: string): Promise<string> {
    await this.page.evaluate(async () => {
      await document.fonts.ready;
    });
    await this.page.waitForFunction(() => [...document.images].every((image) => image.complete));
    const path = join(project, 'test-results/pictures', `${name}.png`);
    await this.page.screenshot({ path });
    return path;
  }

  /** Without warning, as a power cut would. */
  async killRecorder(): Promise<void> {
    const pid = recorderOf(this.#shell.pid);
    if (pid === undefined) throw new Error('No recorder is running.');
    process.kill(pid, 'SIGKILL');
    await until('the recorder is dead', () => !isAlive(pid) || undefined);
  }

  /** Without warning; afterwards only a new launch on the same folder makes sense. */
  async killShell(): Promise<void> {
    const hasEnded = new Promise((ended) => this.#shell.once('exit', ended));
    this.#shell.kill('SIGKILL');
    await hasEnded;
  }

  /** Closes the window as the mechanic does, and waits until nothing of the program runs. */
  async close(): Promise<void> {
    const recorder = recorderOf(this.#shell.pid);
    if (this.#shell.exitCode === null && this.#shell.signalCode === null) await this.app.close();
    for (const pid of [recorder, this.recorderPid]) {
      if (pid !== undefined) await until('the recorder has ended', () => !isAlive(pid) || undefined);
    }
  }

  /** Errors that a test provokes on purpose. */
  allowErrors(pattern: RegExp): void {
    this.#allowed.push(pattern);
  }

  /** What the page complained of in its console, or threw, and no test allowed. */
  unexpectedErrors(): string[] {
    return this.#errors.filter((error) => !this.#allowed.some((pattern) => pattern.test(error)));
  }

  #listenForErrors(): void {
    this.page.on('pageerror', (error) => this.#errors.push(String(error)));
    this.page.on('crash', () => this.#errors.push('the page crashed'));
    this.page.on('console', (message) => {
      if (message.type() === 'error') this.#errors.push(`${message.text()} (${message.location().url})`);
    });
  }
}

function environment(settings: string): Record<string, string> {
  const { NODE_OPTIONS, ELECTRON_RUN_AS_NODE, ...kept } = process.env;
  return { ...(kept as Record<string, string>), XDG_CONFIG_HOME: settings };
}
