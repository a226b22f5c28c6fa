import type { DiagramKind } from './kind.ts';
import { assemblyTree } from './kinds/assembly-tree.ts';
import { crankshaft } from './kinds/crankshaft.ts';
import { cylinderSection } from './kinds/cylinder-section.ts';
import { deckPlan, fireFace } from './kinds/deck-and-fire-face.ts';
import { hydraulicCylinder } from './kinds/hydraulic-cylinder.ts';
import { lineRun } from './kinds/line-run.ts';
import { loaderTower } from './kinds/loader-tower.ts';

/** Every way of drawing where something is; the first that can show a place draws it, the tree of parts shows the rest. */
export const diagramKinds: readonly DiagramKind[] = [
  fireFace,
  deckPlan,
  cylinderSection,
  crankshaft,
  hydraulicCylinder,
  lineRun,
  loaderTower,
  assemblyTree,
];
