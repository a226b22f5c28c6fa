import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { diagramsFor } from '../../../shared-lib/diagrams/diagram-for.ts';
import { Scenario } from '../../../shared-lib/scenario/schema.ts';
import { toRecords } from '../../../shared-lib/scenario/to-records.ts';

/** The worked cases of the trade's handbook: every place of every finding of theirs is drawn, at the bore it names. */
const folder = new URL('../scenarios/', import.meta.url);
const files = readdirSync(folder).filter((name) => /^s\d.*\.json$/.test(name));

/** Which drawing tells a mechanic where each is: by hand, from the handbook's chapter 11. */
const drawnOn: Readonly<Record<string, string>> = {
  'ENG/HD.1/EVS.3.1@from=EVS.3.1;to=INJB.3': 'fire-face',
  'ENG/HD.1/BRIDGE.2': 'fire-face',
  'ENG/BLK/DECK.1': 'deck-plan',
  'ENG/LNR.5@side=THR;face=IN;z=5-115': 'cylinder-section',
  'ENG/PST.5/SKT@side=THR': 'cylinder-section',
  'ENG/LNR.5@zone=TRR': 'cylinder-section',
  'ENG/ROD.5/RBRG': 'cylinder-section',
  'ENG/JET.5': 'cylinder-section',
  'ENG/JET.1': 'deck-plan',
  'ENG/LNR.4@side=THR;face=OUT;z=90-160': 'cylinder-section',
  'ENG/LNR.2@side=THR;face=OUT': 'deck-plan',
  'ENG/CRK/MBRG.4': 'crankshaft',
  'HYD/CYL.blade.L': 'hydraulic-cylinder',
  'HYD/CYL.blade.L/BAR@z=300-480': 'hydraulic-cylinder',
  'HYD/HOSE.jack.RL@end=A;z=260': 'line-run',
  'HYD/HOSE.boom.L@end=A;z=340': 'line-run',
  'FRM/LOADERTWR.R@near=PIN.2:30': 'loader-tower',
  'INST/TEMP': 'assembly-tree',
  'BRK/DISC.L': 'assembly-tree',
  'PROT/ROPS': 'assembly-tree',
};

const drawn = files.flatMap((file) => {
  const records = toRecords(Scenario.parse(JSON.parse(readFileSync(new URL(file, folder), 'utf8'))), (what) => what);
  return records.visits.flatMap((visit) => {
    const diagrams = diagramsFor(
      visit.findings.map(({ id, number, state, locations }) => ({
        findingId: id,
        tag: { number, tier: 3, state },
        locations,
      })),
      records.layout.layout,
    );
    return visit.findings.flatMap(({ id, locations }) =>
      locations.map((location) => ({
        name: `${file} ${id} ${location}`,
        location,
        on: diagrams.filter(({ anchors }) =>
          anchors.some((anchor) => anchor.findingId === id && anchor.location === location),
        ),
      })),
    );
  });
});

it('has the places of all eight files', () => {
  expect(files).toHaveLength(8);
  expect(drawn.length).toBeGreaterThan(50);
});

it.each(drawn)('$name', ({ location, on }) => {
  expect(on).toHaveLength(1);
  const [diagram] = on;
  const wanted = drawnOn[location];
  if (wanted !== undefined) expect(diagram?.kind).toBe(wanted);
  expect(diagram?.title).toMatch(/^[A-Z][a-z]/);
});

it('each place that was written down by hand is in the cases', () => {
  const known = new Set(drawn.map(({ location }) => location));
  expect(Object.keys(drawnOn).filter((location) => !known.has(location))).toEqual([]);
});
