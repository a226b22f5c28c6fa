import { readFileSync, renameSync, writeFileSync } from 'node:fs';

/** Where the window stood when it was last closed. */
export interface WindowState {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly isMaximized: boolean;
}

/** @returns null on a first start, or when the file is not what was written: a default then serves as well */
export function readWindowState(file: string): WindowState | null {
  try {
    const { x, y, width, height, isMaximized } = JSON.parse(readFileSync(file, 'utf8'));
    const areNumbers = [x, y, width, height].every((value) => Number.isInteger(value));
    return areNumbers ? { x, y, width, height, isMaximized: isMaximized === true } : null;
  } catch {
    return null;
  }
}

/** Renamed into place, so that a half-written file is never read. A full disk must not keep the window from closing. */
export function writeWindowState(file: string, state: WindowState): void {
  try {
    writeFileSync(`${file}.new`, JSON.stringify(state));
    renameSync(`${file}.new`, file);
  } catch (error) {
    console.error(`The place of the window could not be kept: ${error}`);
  }
}
