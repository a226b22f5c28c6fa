import type { z } from 'zod';
import { checkReferences } from './check-references.ts';
import { ScenarioShape } from './shape.ts';

/** A file of the right shape whose every name is one it has given. */
export const Scenario = ScenarioShape.superRefine((scenario, context) => {
  for (const { path, message } of checkReferences(scenario)) context.addIssue({ code: 'custom', path, message });
});
export type Scenario = z.infer<typeof Scenario>;
