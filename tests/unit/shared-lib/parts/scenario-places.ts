import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Layout } from '../../../../shared-lib/model/layout.ts';

interface Scenario {
  readonly machine: { readonly layout: Layout };
}

const folder = join(import.meta.dirname, '../../../reference/scenarios');
const scenarios = new Map(
  readdirSync(folder).flatMap((file) => {
    const [name] = /^s\d(?=-)/.exec(file) ?? [];
    return name === undefined ? [] : [[name, JSON.parse(readFileSync(join(folder, file), 'utf8')) as Scenario]];
  }),
);

/** What holds a place, or several, in a scenario file. */
const placeKeys: ReadonlySet<string> = new Set(['item', 'locations', 'has', 'at']);

const placesIn = (part: unknown): string[] =>
  Object.entries(Object(part)).flatMap(([key, value]) =>
    placeKeys.has(key) ? [value].flat().map(String) : typeof value === 'object' ? placesIn(value) : [],
  );

/** Every place that the worked cases name, by the case. */
export const scenarioPlaces: readonly (readonly [string, string])[] = [...scenarios].flatMap(([name, scenario]) =>
  [...new Set(placesIn(scenario))].map((place) => [name, place] as const),
);

/** The machine of a worked case. */
export function layoutOf(scenario: string): Layout {
  const found = scenarios.get(scenario);
  if (found === undefined) throw new Error(`no scenario ${scenario}`);
  return found.machine.layout;
}
