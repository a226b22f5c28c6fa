import type { Scene } from '../engine/scene.ts';

/** Every scene by the name of its picture. */
const subjects: Record<string, () => Promise<Scene>> = {
  'head-fire-face': async () => (await import('./head-fire-face.ts')).scene(),
  'block-deck': async () => (await import('./block-deck.ts')).scene(),
  'radiator-fins': async () => (await import('./radiator-fins.ts')).scene(),
  'coolant-passage': async () => (await import('./coolant-passage.ts')).scene(),
  'lift-rod': async () => (await import('./lift-rod.ts')).scene(),
  'liner-coolant-side': async () => (await import('./liner-coolant-side.ts')).scene(),
  'piston-skirt': async () => (await import('./piston-skirt.ts')).scene(),
  'piston-crown': async () => (await import('./piston-crown.ts')).scene(),
  'hose-rubbed': async () => (await import('./hose.ts')).scene(false),
  'hose-wet': async () => (await import('./hose.ts')).scene(true),
  'tower-weld-autumn': async () => (await import('./tower-weld.ts')).scene(false),
  'tower-weld-spring': async () => (await import('./tower-weld.ts')).scene(true),
  dashboard: async () => (await import('./dashboard.ts')).scene(),
  'battery-strap': async () => (await import('./battery-strap.ts')).scene(),
  'steering-play': async () => (await import('./steering-play.ts')).scene(),
  'identity-plate': async () => (await import('./identity-plate.ts')).scene(),
};

export const sceneNames: readonly string[] = Object.keys(subjects);

export async function sceneNamed(name: string): Promise<Scene> {
  const make = subjects[name];
  if (!make) throw new Error(`There is no scene ${name}; there are ${sceneNames.join(', ')}`);
  return await make();
}
