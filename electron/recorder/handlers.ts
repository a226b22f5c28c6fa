import { annotationHandlers } from './annotations/handlers.ts';
import { choiceHandlers } from './choices/handlers.ts';
import { comparisonHandlers } from './comparisons/handlers.ts';
import type { Handlers } from './context.ts';
import { findingHandlers } from './findings/handlers.ts';
import { intakeHandlers } from './intake/handlers.ts';
import { journalHandlers } from './journal/handlers.ts';
import { machineHandlers } from './machines/handlers.ts';
import { markHandlers } from './marks/handlers.ts';
import { cardHandlers } from './measuring/card-handlers.ts';
import { measuringHandlers } from './measuring/handlers.ts';
import { photoHandlers } from './photos/handlers.ts';
import { readingHandlers } from './readings/handlers.ts';
import { reportHandlers } from './reports/handlers.ts';
import { returnHandlers } from './returning/handlers.ts';
import { scenarioHandlers } from './scenario/handlers.ts';
import { shopHandlers } from './shop/handlers.ts';
import { suspicionHandlers } from './suspicions/handlers.ts';
import { visitHandlers } from './visits/handlers.ts';
import { workHandlers } from './work/handlers.ts';

/** Every operation's handler. A test checks that none of the contract's operations is without one. */
export const handlers: Handlers = {
  ...shopHandlers,
  ...machineHandlers,
  ...visitHandlers,
  ...intakeHandlers,
  ...photoHandlers,
  ...markHandlers,
  ...measuringHandlers,
  ...cardHandlers,
  ...annotationHandlers,
  ...comparisonHandlers,
  ...findingHandlers,
  ...readingHandlers,
  ...suspicionHandlers,
  ...choiceHandlers,
  ...returnHandlers,
  ...workHandlers,
  ...reportHandlers,
  ...journalHandlers,
  ...scenarioHandlers,
};
