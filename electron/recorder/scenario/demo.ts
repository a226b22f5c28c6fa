import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Context } from '../context.ts';
import { projectFile } from '../own-files.ts';
import { applyScenario } from './apply.ts';
import { readScenario } from './read-scenario.ts';

const demoFolder = projectFile('assets/demo');

/** Fills an empty folder with the made-up shop: the scenario files of the demo, in the order of their names. */
export const fillWithDemo = async (context: Context): Promise<void> => {
  const names = (await readdir(demoFolder)).filter((name) => /^\d.*\.json$/.test(name)).sort();
  for (const name of names) {
    const { scenario, folder } = await readScenario(join(demoFolder, name));
    await applyScenario(context, scenario, folder);
  }
};
