import type { Finding } from '../../model/finding.ts';
import type { Layout } from '../../model/layout.ts';
import { classesOfPlace } from '../../parts/classes-of-place.ts';
import type { RankingUse } from '../rankable.ts';
import { bareMainCable } from './bare-main-cable.ts';
import { battery } from './battery.ts';
import { carbonMonoxide } from './carbon-monoxide.ts';
import { chainOrFork } from './chain-or-fork.ts';
import { defeatedInterlock } from './defeated-interlock.ts';
import { engineWillNotStop } from './engine-will-not-stop.ts';
import { fluidJet } from './fluid-jet.ts';
import { fuelInSump } from './fuel-in-sump.ts';
import { fuelLeak } from './fuel-leak.ts';
import { hook } from './hook.ts';
import { liftStructure } from './lift-structure.ts';
import { loadDrift } from './load-drift.ts';
import { loadHoldingHose } from './load-holding-hose.ts';
import type { NamedCondition } from './named-condition.ts';
import { noBeltOnSlope } from './no-belt-on-slope.ts';
import { parkingBrake } from './parking-brake.ts';
import { raisedUnsupported } from './raised-unsupported.ts';
import { rolloverFrame } from './rollover-frame.ts';
import { serviceBrake } from './service-brake.ts';
import { steeringJoint } from './steering-joint.ts';
import { unguardedDriveline } from './unguarded-driveline.ts';
import { wheelOrRim } from './wheel-or-rim.ts';

/** Where several match, the first one here is named. */
export const namedConditions: readonly NamedCondition[] = [
  steeringJoint,
  serviceBrake,
  parkingBrake,
  loadDrift,
  chainOrFork,
  hook,
  liftStructure,
  loadHoldingHose,
  fluidJet,
  fuelLeak,
  fuelInSump,
  rolloverFrame,
  noBeltOnSlope,
  defeatedInterlock,
  wheelOrRim,
  engineWillNotStop,
  unguardedDriveline,
  carbonMonoxide,
  battery,
  bareMainCable,
  raisedUnsupported,
];

export function namedConditionOf(id: string | null): NamedCondition | null {
  return namedConditions.find((condition) => condition.id === id) ?? null;
}

/** The do-not-operate condition a finding matches at any of its places, or null. */
export function proposeNamedCondition(
  finding: Pick<Finding, 'defect' | 'facts' | 'locations'>,
  layout: Layout,
  use: RankingUse,
): NamedCondition | null {
  const facts = new Set(finding.facts);
  const places =
    finding.locations.length === 0
      ? [new Set<never>()]
      : finding.locations.map((place) => classesOfPlace(place, layout));
  return (
    namedConditions.find((condition) =>
      places.some((classes) => condition.matches({ defect: finding.defect, classes, facts, use })),
    ) ?? null
  );
}
