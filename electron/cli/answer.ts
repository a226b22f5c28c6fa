import { AppError } from '../../shared-lib/contract/errors.ts';
import { errorText } from '../../shared-lib/wording/errors.ts';
import { exitCodes } from './exit-codes.ts';

/** Prints for people, or the same as one JSON value. */
export const answer = (json: boolean, value: unknown, lines: readonly string[]): void => {
  process.stdout.write(json ? `${JSON.stringify(value, null, 2)}\n` : `${lines.join('\n')}\n`);
};

const codeOf = (error: AppError): number => (error.code === 'folder-held' ? exitCodes.held : exitCodes.refused);

/** Runs a command's work; a refusal becomes its sentence on stderr and an exit code. */
export const run = async (json: boolean, work: () => Promise<number>): Promise<void> => {
  try {
    process.exitCode = await work();
  } catch (error) {
    if (!(error instanceof AppError)) throw error;
    const sentence = errorText(error.toWire());
    if (json) process.stdout.write(`${JSON.stringify({ error: error.toWire(), sentence }, null, 2)}\n`);
    process.stderr.write(`${sentence}\n`);
    process.exitCode = codeOf(error);
  }
};
