import { twoEndsMachine } from '../two-ends.ts';

export const arrowMachine = twoEndsMachine('arrow');
