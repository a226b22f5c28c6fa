import { describe, expect, it } from 'vitest';
import { sheetOf } from '../../../../shared-lib/sheets/index.ts';
import { cluesOf } from '../../../../shared-lib/suspicions/clues.ts';
import { says } from '../../../../shared-lib/suspicions/said.ts';
import { symptoms, symptomsIn } from '../../../../shared-lib/suspicions/symptoms.ts';

it.each([
  ['Cracked between the valves', 'crack', true],
  ['it has a Crack', 'crack', true],
  ['a bracket', 'crack', false],
  ['uses half a litre of water', 'uses water', true],
  ['water it uses', 'uses water', false],
  ['uses oil and then, a long while after that, water', 'uses water', false],
  ['no leak on the ground', 'leak', false],
  ['it does not leak', 'leak', false],
  ['no smoke, but it leaks', 'leak', true],
  ['', 'leak', false],
])('%s / %s', (text, phrase, wanted) => {
  expect(says(text, [phrase])).toBe(wanted);
});

// The complaints of the handbook's seven cases, each with what it is about by their own titles and readings.
describe('the owner’s words', () => {
  it.each([
    ['Half a litre of coolant a day, nothing on the ground, white smoke cold.', ['loses coolant', 'smokes']],
    [
      'Down on power, oil out of the breather, pressure light flickers hot.',
      ['smokes', 'is down on power', 'uses oil', 'has little oil pressure'],
    ],
    ['New valve seals last spring, blade still drops.', ['sinks or drops under load']],
    ['Left rear jack sinks by lunch.', ['sinks or drops under load']],
    ['Oil level creeping up and grey.', ['oil and coolant mix']],
    ['Look it over before the season.', []],
    ['Slow to crank.', ['turns over slowly']],
    ['Slow to start, creeps when parked.', ['turns over slowly', 'does not brake or hold']],
  ])('%s', (complaint, names) => {
    expect(symptomsIn(complaint).map(({ name }) => name)).toEqual(names);
  });
});

it('every symptom is asked about by sheets that there are, once each', () => {
  for (const { name, sheets } of symptoms) {
    expect(sheets.length, name).toBeGreaterThan(0);
    expect(new Set(sheets).size, name).toBe(sheets.length);
    for (const id of sheets) expect(sheetOf(id), `${name}: ${id}`).not.toBeNull();
  }
});

describe('the words of a suspicion', () => {
  it.each([
    ['crack or gasket lets coolant into a cylinder', ['crack', 'combgas']],
    ['upper hose leaks at its clamp', ['sealleak']],
    ['engine block', []],
    ['constructor toString', []],
  ])('%s', (what, kinds) => {
    expect(cluesOf({ what, defect: null }, '').kinds.map(({ id }) => id)).toEqual(kinds);
  });

  it('do not count where the kind is said', () => {
    const clues = cluesOf({ what: 'a crack, or it leaks', defect: 'wear' }, 'It leaks.');
    expect(clues.kinds.map(({ id }) => id)).toEqual(['wear']);
    expect([clues.own, clues.complaint]).toEqual([[], []]);
  });
});
