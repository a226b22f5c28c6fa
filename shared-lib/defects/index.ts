import { agedRubber } from './aged-rubber.ts';
import { blockage } from './blockage.ts';
import { breakage } from './breakage.ts';
import { brinelling } from './brinelling.ts';
import { burning } from './burning.ts';
import { bypassed } from './bypassed.ts';
import { cavitationErosion } from './cavitation-erosion.ts';
import { chafing } from './chafing.ts';
import { combustionGas } from './combustion-gas.ts';
import { contamination } from './contamination.ts';
import { corrodedContact } from './corroded-contact.ts';
import { corrosion } from './corrosion.ts';
import { crack } from './crack.ts';
import { damagedThread } from './damaged-thread.ts';
import { dead } from './dead.ts';
import type { Defect } from './defect.ts';
import { deformation } from './deformation.ts';
import { deposit } from './deposit.ts';
import { drift } from './drift.ts';
import { earlierRepair } from './earlier-repair.ts';
import { fluidJet } from './fluid-jet.ts';
import { fretting } from './fretting.ts';
import { heatChecking } from './heat-checking.ts';
import { hoseCover } from './hose-cover.ts';
import { hoseEnd } from './hose-end.ts';
import { leak } from './leak.ts';
import { looseness } from './looseness.ts';
import { lowOutput } from './low-output.ts';
import { missingGuard } from './missing-guard.ts';
import { missingPart } from './missing-part.ts';
import { mixedFluids } from './mixed-fluids.ts';
import { noise } from './noise.ts';
import { overheatingMark } from './overheating-mark.ts';
import { pitting } from './pitting.ts';
import { play } from './play.ts';
import { polishing } from './polishing.ts';
import { scale } from './scale.ts';
import { scoring } from './scoring.ts';
import { scuffing } from './scuffing.ts';
import { seizure } from './seizure.ts';
import { sinking } from './sinking.ts';
import { sludge } from './sludge.ts';
import { spalling } from './spalling.ts';
import { warping } from './warping.ts';
import { wear } from './wear.ts';
import { wearStep } from './wear-step.ts';
import { wrongAssembly } from './wrong-assembly.ts';
import { wrongFastener } from './wrong-fastener.ts';
import { wrongFluid } from './wrong-fluid.ts';

/** Every kind of defect, in the handbook's order. A new kind is one file and one line here. */
export const defects = [
  crack,
  heatChecking,
  overheatingMark,
  scuffing,
  scoring,
  seizure,
  burning,
  missingPart,
  breakage,
  pitting,
  cavitationErosion,
  corrosion,
  corrodedContact,
  scale,
  sludge,
  deposit,
  warping,
  sinking,
  fretting,
  brinelling,
  spalling,
  wearStep,
  wear,
  polishing,
  damagedThread,
  deformation,
  chafing,
  hoseCover,
  hoseEnd,
  leak,
  fluidJet,
  mixedFluids,
  combustionGas,
  blockage,
  contamination,
  wrongFluid,
  play,
  looseness,
  wrongFastener,
  earlierRepair,
  dead,
  bypassed,
  missingGuard,
  drift,
  lowOutput,
  noise,
  wrongAssembly,
  agedRubber,
] as const satisfies readonly Defect[];

export type DefectId = (typeof defects)[number]['id'];

const byId: ReadonlyMap<string, Defect> = new Map(defects.map((defect) => [defect.id, defect]));

/** The kind of an id, or null: a record from elsewhere may name one we do not know. */
export function defectOf(id: string | null): Defect | null {
  return id === null ? null : (byId.get(id) ?? null);
}
