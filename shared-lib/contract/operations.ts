import type { z } from 'zod';
import { annotationOperations } from './annotations.ts';
import { cardOperations } from './card.ts';
import { choiceOperations } from './choices.ts';
import { comparisonOperations } from './comparisons.ts';
import { findingOperations } from './findings.ts';
import { intakeOperations } from './intake.ts';
import { journalOperations } from './journal.ts';
import { machineOperations } from './machines.ts';
import { measuringOperations } from './measuring.ts';
import type { Operation } from './operation.ts';
import { readingOperations } from './readings.ts';
import { reportOperations } from './reports.ts';
import { returnOperations } from './returning.ts';
import { scenarioOperations } from './scenario.ts';
import { shellOperations } from './shell.ts';
import { shopOperations } from './shop.ts';
import { markOperations, shotOperations } from './shots.ts';
import { visitOperations } from './visits.ts';
import { workOperations } from './work.ts';

/** Every operation there is. The renderer and the recorder both compile against this map. */
export const operations = {
  ...shopOperations,
  ...machineOperations,
  ...visitOperations,
  ...intakeOperations,
  ...shotOperations,
  ...markOperations,
  ...measuringOperations,
  ...cardOperations,
  ...annotationOperations,
  ...comparisonOperations,
  ...findingOperations,
  ...readingOperations,
  ...choiceOperations,
  ...returnOperations,
  ...workOperations,
  ...reportOperations,
  ...journalOperations,
  ...scenarioOperations,
  ...shellOperations,
};

export type Operations = typeof operations;
export type OperationName = keyof Operations;
/** What a caller hands over. */
export type InputOf<N extends OperationName> = z.input<Operations[N]['input']>;
/** What a handler gets, defaults filled in. */
export type CheckedInputOf<N extends OperationName> = z.output<Operations[N]['input']>;
export type OutputOf<N extends OperationName> = Operations[N] extends Operation<z.ZodType, infer O> ? O : never;
