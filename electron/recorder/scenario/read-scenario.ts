import { readFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import { Scenario } from '../../../shared-lib/scenario/schema.ts';

/**
 * Reads a scenario file; its pictures are named beside it.
 *
 * @throws AppError 'file-unreadable', 'scenario-malformed' with each place that is off
 */
export const readScenario = async (path: string): Promise<{ scenario: Scenario; folder: string }> => {
  let text: string;
  try {
    text = await readFile(path, 'utf8');
  } catch (cause) {
    throw new AppError(
      'file-unreadable',
      { path, reason: cause instanceof Error ? cause.message : String(cause) },
      { cause },
    );
  }
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (cause) {
    throw new AppError('scenario-malformed', { path, issues: [{ path: '', message: 'it is no JSON' }] }, { cause });
  }
  const checked = Scenario.safeParse(value);
  if (!checked.success) {
    const issues = checked.error.issues.map((issue) => ({ path: issue.path.join('.'), message: issue.message }));
    throw new AppError('scenario-malformed', { path, issues });
  }
  return { scenario: checked.data, folder: dirname(path) };
};
