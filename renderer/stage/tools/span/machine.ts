import { twoEndsMachine } from '../two-ends.ts';

export const spanMachine = twoEndsMachine('span');
