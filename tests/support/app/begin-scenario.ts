import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { project } from './program.ts';

const scenarios = join(project, 'tests/reference/scenarios');

interface ScenarioVisit {
  readonly findings: readonly unknown[];
  readonly [part: string]: unknown;
}

/** Intake of a visit and nothing of what was done in it: that is for the hands of a test. */
const onlyIntake = ({ id, date, by, meter, complaint, use, conditions, scope }: ScenarioVisit): ScenarioVisit => ({
  ...{ id, date, by, meter, complaint, use, conditions, scope },
  findings: [],
});

export interface Applied {
  /** What each visit and finding of the file is called in the record. */
  readonly visits: Readonly<Record<string, string>>;
  readonly findings: Readonly<Record<string, string>>;
}

/**
 * Puts a whole case into the data folder of a window that is not open yet, through the command line.
 *
 * @param file  its path in the project
 */
export const wholeScenario = (folder: string, file: string): Applied => apply(folder, join(project, file));

/**
 * Puts the beginning of a worked case into such a folder: the visits before the last whole and over, and of the last its
 * intake alone, or nothing.
 */
export function beginScenario(folder: string, file: string, lastVisit: 'its intake' | 'nothing'): Applied {
  const scenario = JSON.parse(readFileSync(join(scenarios, file), 'utf8'));
  const { expect: _, visits, ...others } = scenario as { expect: unknown; visits: ScenarioVisit[] };
  const begun = visits.flatMap((visit, index) => {
    if (index < visits.length - 1) return [{ ...visit, left: true }];
    return lastVisit === 'its intake' ? [onlyIntake(visit)] : [];
  });
  const path = join(folder, 'beginning.json');
  writeFileSync(path, JSON.stringify({ ...others, visits: begun }));
  return apply(folder, path);
}

function apply(folder: string, path: string): Applied {
  const dataFolder = join(folder, 'record');
  mkdirSync(dataFolder, { recursive: true });
  const told = execFileSync(
    join(project, 'node_modules/.bin/node'),
    [join(project, 'electron/cli/main.ts'), 'apply', '--json', '--data', dataFolder, path],
    { encoding: 'utf8' },
  );
  return JSON.parse(told);
}
