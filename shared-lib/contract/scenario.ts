import { z } from 'zod';
import { change } from './operation.ts';

/** What a scenario file became: its own short ids and the record's. */
export interface AppliedScenario {
  readonly machineId: string;
  readonly visits: Readonly<Record<string, string>>;
  /** By visit and finding: `V1/F1`. */
  readonly findings: Readonly<Record<string, string>>;
  /** Parts of the file that the record has no room for yet, in words. */
  readonly leftOut: readonly string[];
}

export const scenarioOperations = {
  /** Enters a scenario file's machine and visits as if a mechanic had. The file is named by a token. */
  'scenario.apply': change<AppliedScenario>()(z.strictObject({ token: z.string() })),
};
