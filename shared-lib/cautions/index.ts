import type { Caution } from './caution.ts';
import { atWork } from './hazards/at-work.ts';
import { crushAndFall } from './hazards/crush-and-fall.ts';
import { dustAndPoison } from './hazards/dust-and-poison.ts';
import { fireAndFumes } from './hazards/fire-and-fumes.ts';
import { harmToTheEngine } from './hazards/harm-to-the-engine.ts';
import { heatAndBurns } from './hazards/heat-and-burns.ts';
import { movingParts } from './hazards/moving-parts.ts';
import { storedPressure } from './hazards/stored-pressure.ts';
import { travelAndProtection } from './hazards/travel-and-protection.ts';

/**
 * Every caution, a file to each family of hazards. Texts, triggers and sources: the handbook's catalogue (chapter 9);
 * signal words in the sense of ANSI Z535.4.
 */
export const cautions: readonly Caution[] = [
  ...crushAndFall,
  ...storedPressure,
  ...fireAndFumes,
  ...heatAndBurns,
  ...movingParts,
  ...travelAndProtection,
  ...dustAndPoison,
  ...atWork,
  ...harmToTheEngine,
];
