import { manyPointsMachine } from '../many-points.ts';

export const pathMachine = manyPointsMachine('path');
