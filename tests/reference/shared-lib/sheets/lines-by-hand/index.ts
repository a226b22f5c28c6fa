import { anyPart } from './any-part.ts';
import { batteryStartingCharging } from './battery-starting-charging.ts';
import { cooling } from './cooling.ts';
import { crankOilFuel } from './crank-oil-fuel.ts';
import { cylindersAndHead } from './cylinders-and-head.ts';
import { hydraulics } from './hydraulics.ts';
import type { LineByHand } from './line-by-hand.ts';
import { steeringBrakesLifting } from './steering-brakes-lifting.ts';

/** By the shelf their sheet lies on. */
export const linesByHand: readonly LineByHand[] = [
  ...batteryStartingCharging,
  ...cooling,
  ...cylindersAndHead,
  ...crankOilFuel,
  ...hydraulics,
  ...steeringBrakesLifting,
  ...anyPart,
];
