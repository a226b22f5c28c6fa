import { manyPointsMachine } from '../many-points.ts';

export const areaMachine = manyPointsMachine('area');
