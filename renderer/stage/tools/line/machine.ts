import { twoEndsMachine } from '../two-ends.ts';

export const lineMachine = twoEndsMachine('line');
