import { describe, expect, it } from 'vitest';
import { compute } from '../../../../shared-lib/sheets/compute.ts';
import type { SheetInput } from '../../../../shared-lib/sheets/outcome.ts';

/**
 * Where each sheet calls its own readings void, refuses one, asks about one or says more than numbers: each rule a step to
 * either side of its edge. The rules are the handbook's; common practice, no source, unless a line says otherwise.
 */
type Typed = Readonly<Record<string, string>>;
type Row<T extends unknown[]> = [sheet: string, inputs: Typed, conditions: Typed, ...T];

const run = (sheet: string, inputs: Typed, conditions: Typed, limits: SheetInput['limits'] = {}) =>
  compute(sheet, { inputs, conditions, limits });

const loaded = { rating: '900', loaded: '9.6', rest: '12.6', load: '450' };
const stop = { speed: '20', distance: '8.5' };
const four = { raw: '24/25/24/24' };
const held = { applied: '90', after: '89', time: '10' };

describe('void', () => {
  const rows: Row<[because: RegExp]>[] = [
    ['MS-01', { rest: '12.6' }, { hoursRested: '3.9' }, /less than 4 hours/],
    ['MS-02', { ...loaded, load: '404' }, { temperature: '20' }, /not half the cold-cranking rating/],
    ['MS-02', { ...loaded, load: '496' }, { temperature: '20' }, /not half the cold-cranking rating/],
    ['MS-02', { ...loaded, rest: '12.44' }, { temperature: '20' }, /under 75 %/],
    ['MS-02', loaded, { temperature: '20', charge: '74' }, /under 75 %/],
    ['MS-02', loaded, { temperature: '20', state: 'frozen' }, /frozen; it must not be loaded/],
    ['MS-03', { volts: '10' }, { system: '12', fuel: 'not cut' }, /fuel was not cut/],
    [
      'MS-04',
      { positive: '0.1', ground: '0.1', battery: '10.31', starter: '10.0' },
      { system: '12' },
      /0.11 V is not accounted/,
    ],
    [
      'MS-04',
      { positive: '0.3', ground: '0.1', battery: '10.2', starter: '10.0' },
      { system: '12' },
      /-0.20 V is not accounted/,
    ],
    ['MS-05', { volts: '14.2' }, { system: '12', belt: 'yes' }, /belt slipped/],
    ['MS-07', { ...held, time: '9.9' }, {}, /shorter than 10 minutes/],
    ['MS-08', { cap: '50', glycol: '71', highest: '90' }, {}, /over 70 % glycol/],
    ['MS-08', { cap: '50', glycol: '30', highest: '90' }, { glycolKind: 'propylene' }, /propylene/],
    ['MS-09', { colour: 'turned yellow' }, { levelLowered: 'no' }, /coolant stood/],
    ['MS-10', { ...four, speeds: '200/200/200/179' }, {}, /differ by more than 10 %/],
    ['MS-10', four, { coolant: '69' }, /colder than 70/],
    ['MS-10', four, { intake: 'closed' }, /intake was closed/],
    ['MS-10', four, { fuel: 'not shut' }, /may have fired/],
    ['MS-11', { supply: '6', cylinder: '5' }, { piston: 'not held' }, /not held at top dead centre/],
    ['MS-13', { straightedge: '0.05' }, { clamped: 'clamped' }, /clamped/],
    ['MS-14', { heights: '0.1/0.1' }, { cleaned: 'no' }, /counterbore was not cleaned/],
    ['MS-21', { radius: '200', arc: '64' }, { steering: 'powered', engine: 'off' }, /with the engine running/],
    ['MS-22', stop, { pedals: 'one pedal' }, /not latched together/],
    ['MS-22', stop, { pedals: 'not latched' }, /not latched together/],
    ['MS-22', stop, { surface: 'wet' }, /not dry and firm/],
    ['MS-22', stop, { surface: 'loose' }, /not dry and firm/],
    ['MS-22', { creep: '3', time: '4.9' }, {}, /less than 5 minutes/],
    ['MS-24', { before: '22', now: '40' }, { part: 'changed between' }, /changed between/],
    ['MS-29', { bubbles: 'none', time: '9.9' }, {}, /under 10 minutes/],
    ['MS-29', { bubbles: 'seen', time: '10' }, { fixture: 'no' }, /not proved tight/],
  ];
  it.each(rows)('%s %j %j', (sheet, inputs, conditions, because) => {
    const outcome = run(sheet, inputs, conditions);
    expect(outcome.results.map(({ voidBecause }) => voidBecause).join()).toMatch(because);
    expect(outcome.results.map(({ verdict }) => verdict)).toContain('void');
  });

  it.each([
    ['MS-20', { drift: '20', time: '5' }, { engine: 'running' }, 'drift', /engine ran/],
    ['MS-20', { drift: '20', time: '5' }, { control: 'not neutral' }, 'drift', /not in neutral/],
    ['MS-27', { idle: '90' }, { gauge: 'panel gauge' }, 'idle', /panel gauge/],
  ])('%s %j %j, once a limit is typed', (sheet, inputs, conditions, of, because) => {
    const limits = { [of]: { max: '20', source: 'maker' as const } };
    const line = run(sheet, inputs, conditions, limits).results.find((each) => each.of === of);
    expect(line).toMatchObject({ verdict: 'void', voidBecause: expect.stringMatching(because) });
  });
});

describe('not void', () => {
  const rows: Row<[]>[] = [
    ['MS-01', { rest: '12.6' }, { hoursRested: '4' }],
    ['MS-01', { rest: '12.6' }, { hoursRested: '1', surfaceCharge: 'yes' }],
    ['MS-02', { ...loaded, load: '406' }, { temperature: '20' }],
    ['MS-02', { ...loaded, load: '494' }, { temperature: '20' }],
    ['MS-02', { ...loaded, rest: '12.45' }, { temperature: '20', state: 'sound' }],
    ['MS-02', loaded, { temperature: '20', charge: '75' }],
    ['MS-03', { volts: '10' }, { system: '12', fuel: 'cut' }],
    ['MS-04', { positive: '0.1', ground: '0.1', battery: '10.3', starter: '10.0' }, { system: '12' }],
    ['MS-04', { positive: '0.1', ground: '0.1', battery: '22.39', starter: '22.0' }, { system: '24' }],
    ['MS-05', { volts: '14.2' }, { system: '12', belt: 'no', battery: 'charged' }],
    ['MS-07', held, {}],
    ['MS-08', { cap: '50', glycol: '70', highest: '90' }, {}],
    ['MS-08', { cap: '50', glycol: '0', highest: '90' }, { glycolKind: 'propylene' }],
    ['MS-10', { ...four, speeds: '200/200/200/180' }, { coolant: '70', intake: 'open', fuel: 'shut' }],
    ['MS-11', { supply: '6', cylinder: '5' }, { piston: 'lower, valves shut' }],
    ['MS-13', { straightedge: '0.05' }, { clamped: 'free' }],
    ['MS-14', { heights: '0.1/0.1' }, { clamped: 'yes', cleaned: 'yes' }],
    ['MS-20', { drift: '20', time: '5' }, { engine: 'off', control: 'neutral' }],
    ['MS-21', { radius: '200', arc: '64' }, { steering: 'powered', engine: 'running' }],
    ['MS-21', { radius: '200', arc: '64' }, { steering: 'mechanical', engine: 'off' }],
    ['MS-22', { ...stop, creep: '3', time: '5' }, { pedals: 'latched', surface: 'dry and firm' }],
    ['MS-22', { creep: '30', time: '1' }, {}],
    ['MS-24', { before: '22', now: '40' }, { part: 'the same' }],
    ['MS-29', { bubbles: 'none', time: '10' }, { fixture: 'yes' }],
    ['MS-29', { bubbles: 'seen', time: '1' }, {}],
    // Nobody said how long: that is not short.
    ['MS-29', { bubbles: 'none' }, {}],
    ['MS-22', { creep: '3' }, {}],
  ];
  it.each(rows)('%s %j %j', (sheet, inputs, conditions) => {
    const outcome = run(sheet, inputs, conditions);
    expect(outcome.results.length).toBeGreaterThan(0);
    expect(outcome.results.map(({ voidBecause }) => voidBecause)).toEqual(outcome.results.map(() => null));
  });
});

describe('refused or asked about', () => {
  const rows: Row<[field: string, weight: 'impossible' | 'odd', what: RegExp]>[] = [
    ['MS-01', {}, { state: 'frozen' }, 'state', 'odd', /do not load or charge/],
    ['MS-01', {}, { state: 'cracked' }, 'state', 'odd', /do not load or charge/],
    ['MS-01', {}, { state: 'gassing' }, 'state', 'odd', /do not load or charge/],
    ['MS-02', { loaded: '12.6', rest: '12.5' }, {}, 'loaded', 'impossible', /cannot stand higher/],
    ['MS-03', { volts: '14.5' }, { system: '12' }, 'volts', 'impossible', /cannot stand at 14.5 V/],
    ['MS-03', { volts: '10', dip: '10.1' }, { system: '12' }, 'dip', 'impossible', /above the steady/],
    ['MS-04', { drop: '12.1' }, { system: '12' }, 'drop', 'impossible', /cannot be read in a 12 V/],
    ['MS-04', { battery: '15.1' }, { system: '12' }, 'battery', 'impossible', /cannot be read in a 12 V/],
    ['MS-04', { starter: '15.1' }, { system: '12' }, 'starter', 'impossible', /cannot be read in a 12 V/],
    ['MS-04', { battery: '10', starter: '10.1' }, { system: '12' }, 'starter', 'impossible', /more than the battery/],
    ['MS-04', { gauge: '5/0' }, { system: '12' }, 'gauge', 'impossible', /from 1 to 40/],
    ['MS-05', { volts: '19.3' }, { system: '12' }, 'volts', 'impossible', /cannot stand in a 12 V/],
    ['MS-05', { terminal: '38.5' }, { system: '24' }, 'terminal', 'impossible', /cannot stand in a 24 V/],
    ['MS-05', { atBattery: '38.5' }, { system: '24' }, 'atBattery', 'impossible', /cannot stand in a 24 V/],
    ['MS-06', { opens: '50', holds: '53' }, {}, 'holds', 'impossible', /cannot hold more/],
    ['MS-07', { applied: '90', after: '91' }, {}, 'after', 'impossible', /cannot rise/],
    ['MS-07', { applied: '90', after: '80', capRating: '89' }, {}, 'applied', 'odd', /rated for/],
    ['MS-10', { raw: '24/25', speeds: '200' }, {}, 'speeds', 'impossible', /2 pressures and 1 speeds/],
    ['MS-11', { supply: '6', cylinder: '6.1' }, {}, 'cylinder', 'impossible', /more than is supplied/],
    ['MS-12', { nominal: '100', diameters: '105.1/100' }, {}, 'diameters', 'impossible', /105.1 mm cannot be/],
    ['MS-12', { nominal: '100', diameters: '100/94.9' }, {}, 'diameters', 'impossible', /94.9 mm cannot be/],
    ['MS-12', { nominal: '100', diameters: '100/99.94' }, {}, 'diameters', 'odd', /smaller than new/],
    ['MS-12', { diameters: '100/100; 100/100', depths: '10' }, {}, 'depths', 'impossible', /2 rows of .* 1 depths/],
    ['MS-13', { x: '0/100', y: '0/100', heights: '0/0/0; 0/0/0' }, {}, 'heights', 'impossible', /2 heights/],
    ['MS-13', { x: '0/100', y: '0/100', heights: '0/0' }, {}, 'heights', 'impossible', /2 rows of heights/],
    ['MS-15', { bore: '100', skirt: '100.3' }, {}, 'skirt', 'impossible', /does not go into a bore/],
    ['MS-15', { bore: '100', skirt: '97.9' }, {}, 'skirt', 'odd', /very large clearance/],
    ['MS-16', { guide: '9.5', stem: '9.6' }, {}, 'stem', 'impossible', /does not go into a guide/],
    ['MS-17', { diameters: '70/69', shell: '69.5' }, {}, 'shell', 'impossible', /smaller than itself/],
    ['MS-17', { diameters: '70.06/69.9', whenNew: '70' }, {}, 'diameters', 'odd', /larger than new/],
    ['MS-19', { drops: '2.5' }, {}, 'drops', 'odd', /counted whole/],
    ['MS-20', { bore: '60', rod: '60' }, {}, 'rod', 'impossible', /does not go into a bore/],
    ['MS-21', { radius: '200', chord: '401' }, {}, 'chord', 'impossible', /further apart/],
    ['MS-21', { radius: '200', arc: '1257' }, {}, 'arc', 'odd', /more than a whole turn/],
    ['MS-22', { speed: '18', distance: '10', reaction: '2' }, {}, 'reaction', 'impossible', /longer than the whole/],
    // 20 km/h in 1.28 m would be 12.06 m/s², more than any tyre grips.
    ['MS-22', { speed: '20', distance: '1.28' }, {}, 'distance', 'impossible', /No wheel brakes so hard/],
    ['MS-23', { reading: '3999', before: '4000' }, {}, 'reading', 'odd', /Lower than at the last visit/],
    ['MS-23', { reading: '100', offset: '3899', before: '4000' }, {}, 'reading', 'odd', /Lower than at the last/],
    ['MS-23', { reading: '4049', before: '4000', days: '2' }, {}, 'reading', 'impossible', /24 hours/],
    ['MS-24', { before: '22', now: '19.9' }, {}, 'now', 'odd', /do not shrink/],
    [
      'MS-24',
      { before: '22', now: '23', hoursBefore: '500', hoursNow: '499' },
      {},
      'hoursNow',
      'impossible',
      /cannot fall/,
    ],
    ['MS-25', { bore: '60', rod: '60' }, {}, 'rod', 'impossible', /does not go into a bore/],
    ['MS-25', { loaded: '42.1', unloaded: '40' }, {}, 'loaded', 'odd', /no more under load/],
    ['MS-26', { glycol: '30', freezes: '-23.1' }, {}, 'freezes', 'odd', /freezes near -15 °C/],
    ['MS-26', { glycol: '30', freezes: '-6.9' }, {}, 'freezes', 'odd', /freezes near -15 °C/],
    ['MS-28', { pitches: '16.5' }, {}, 'pitches', 'impossible', /counted whole/],
    ['MS-28', { pitches: '10', pitch: '10', measured: '97.9' }, {}, 'measured', 'impossible', /count again/],
    ['MS-28', { pitches: '10', pitch: '10', measured: '125.1' }, {}, 'measured', 'impossible', /count again/],
    ['MS-28', { heelNew: '40', heel: '40.9' }, {}, 'heel', 'impossible', /thicker than new/],
    ['MS-29', { pressure: '500', after: '501' }, {}, 'after', 'impossible', /cannot rise/],
    ['MS-29', { pressure: '501', mostAllowed: '500' }, {}, 'pressure', 'odd', /more than the maker allows/i],
    ['MS-30', { reading: '5/9', background: '10' }, {}, 'background', 'odd', /outdoors/],
    ['MS-32', { marked: '101', whole: '100' }, {}, 'marked', 'impossible', /More cannot be marked/],
    ['MS-32', { markedParts: '60/41', whole: '100' }, {}, 'markedParts', 'impossible', /More cannot be marked/],
  ];
  it.each(rows)('%s %j %j', (sheet, inputs, conditions, field, weight, what) => {
    expect(run(sheet, inputs, conditions).problems).toContainEqual(
      expect.objectContaining({ input: field, weight, what: expect.stringMatching(what) }),
    );
  });
});

describe('let through', () => {
  const rows: Row<[]>[] = [
    ['MS-01', {}, { state: 'sound' }],
    ['MS-02', { loaded: '12.5', rest: '12.5' }, {}],
    ['MS-03', { volts: '14.4', dip: '14.4' }, { system: '12' }],
    ['MS-04', { battery: '15', starter: '15', gauge: '4/0' }, { system: '12' }],
    ['MS-05', { volts: '19.2', terminal: '19.2', atBattery: '19.2' }, { system: '12' }],
    ['MS-06', { opens: '30/50', holds: '52' }, {}],
    ['MS-07', { applied: '90', after: '90', capRating: '90' }, {}],
    ['MS-07', { applied: '90', after: '95', temperatureChange: '5' }, {}],
    ['MS-11', { supply: '6', cylinder: '6' }, {}],
    ['MS-12', { nominal: '100', diameters: '105/104; 99.96/100', depths: '10/90' }, {}],
    ['MS-13', { x: '0/100', y: '0/100', heights: '0/0; 0/0' }, {}],
    ['MS-15', { bore: '100', skirt: '100.1' }, {}],
    ['MS-15', { bore: '100', skirt: '98.1' }, {}],
    ['MS-16', { guide: '9.5', stem: '9.5' }, {}],
    ['MS-17', { diameters: '70.04/70', whenNew: '70', shell: '70.05' }, {}],
    ['MS-20', { bore: '60', rod: '59' }, {}],
    ['MS-21', { radius: '200', chord: '400', arc: '400' }, {}],
    ['MS-22', { speed: '18', distance: '10.1', reaction: '2' }, {}],
    ['MS-22', { speed: '20', distance: '1.3' }, {}],
    ['MS-23', { reading: '4048', before: '4000', days: '2' }, {}],
    ['MS-23', { reading: '4000', before: '4000', days: '0' }, {}],
    ['MS-24', { before: '22', now: '20', hoursBefore: '500', hoursNow: '500' }, {}],
    ['MS-25', { bore: '60', rod: '59', loaded: '41.9', unloaded: '40' }, {}],
    ['MS-26', { glycol: '30', freezes: '-23' }, {}],
    ['MS-26', { glycol: '30', freezes: '-7' }, {}],
    ['MS-26', { glycol: '30', freezes: '-40' }, { glycolKind: 'propylene' }],
    ['MS-28', { pitches: '10', pitch: '10', measured: '98.1' }, {}],
    ['MS-28', { pitches: '10', pitch: '10', measured: '124.9' }, {}],
    ['MS-28', { heelNew: '40', heel: '40.7' }, {}],
    ['MS-29', { pressure: '500', after: '500', mostAllowed: '500' }, {}],
    ['MS-30', { reading: '5/10', background: '10' }, {}],
    ['MS-32', { marked: '100', whole: '100' }, {}],
  ];
  it.each(rows)('%s %j %j', (sheet, inputs, conditions) => {
    expect(run(sheet, inputs, conditions).problems).toEqual([]);
  });
});

describe('said beside the numbers', () => {
  const rows: Row<[says: RegExp, says: boolean]>[] = [
    ['MS-01', { gravity: '1.26/1.21/1.26' }, {}, /Lowest: cell 2/, true],
    ['MS-01', { rest: '12.44' }, {}, /Charge it before the load test/, true],
    ['MS-01', { rest: '12.45' }, {}, /Charge it before the load test/, false],
    // The handbook's straight line, 28 mV for each kelvin under 21 °C from 9.6 V; at 40 °F 9.136 V, half of it for 6 V.
    ['MS-02', { loaded: '9.3' }, { temperature: '40 °F' }, /at least 9.30 V; .* straight line says 9.14 V/, true],
    ['MS-02', { loaded: '4.7' }, { temperature: '40 °F', batteryVolts: '6' }, /at least 4.65 V; .* 4.57 V/, true],
    ['MS-02', { loaded: '9.7' }, { temperature: '30 °C' }, /at least 9.60 V; .* 9.60 V/, true],
    ['MS-03', { volts: '10', current: '4' }, { system: '12' }, /good, no current: open circuit/, true],
    ['MS-03', { volts: '10', current: '5' }, { system: '12' }, /no current/, false],
    ['MS-03', { volts: '9', current: '4' }, { system: '12' }, /no current/, false],
    ['MS-03', { volts: '9', current: '610', usualCurrent: '500' }, { system: '12' }, /low, current high: drag/, true],
    ['MS-03', { volts: '9', current: '600', usualCurrent: '500' }, { system: '12' }, /current high/, false],
    ['MS-03', { volts: '9', speed: '100', neededSpeed: '150' }, { system: '12' }, /weak or discharged/, true],
    ['MS-03', { volts: '9', speed: '0' }, { system: '12' }, /weak or discharged/, true],
    ['MS-03', { volts: '9', speed: '150', neededSpeed: '150' }, { system: '12' }, /weak or discharged/, false],
    [
      'MS-03',
      { volts: '9.6', current: '610', usualCurrent: '500' },
      { system: '12' },
      /good, .* low compression/,
      true,
    ],
    ['MS-03', { volts: '9.6', speed: '100', neededSpeed: '150' }, { system: '12' }, /cables or contacts/, true],
    ['MS-03', { volts: '9.6', speed: '150', neededSpeed: '150' }, { system: '12' }, /cables or contacts/, false],
    ['MS-03', { volts: '9', neededSpeed: '150' }, { system: '12' }, /weak or discharged/, false],
    ['MS-03', { volts: '9.6', neededSpeed: '150' }, { system: '12' }, /cables or contacts/, false],
    ['MS-03', { volts: '9', current: '4' }, {}, /Voltage good/, false],
    ['MS-03', { volts: '9.6' }, {}, /not known, so the battery voltage is not judged/, true],
    ['MS-04', { drop: '0.1', leg: 'cable' }, {}, /voltage is not known/, true],
    ['MS-04', { drop: '0.1' }, { system: '12' }, /Which leg it is was not said/, true],
    ['MS-04', { drop: '0.1', leg: 'cable' }, { system: '12' }, /not/, false],
    // Copper of 100 mm² and 10 m at 400 A loses 0.6896 V.
    ['MS-04', { drop: '1.04', area: '100', length: '10', current: '400' }, { system: '12' }, /lose 0.69 V/, true],
    ['MS-04', { drop: '1.03', area: '100', length: '10', current: '400' }, { system: '12' }, /lose/, false],
    ['MS-05', { volts: '15.1' }, { system: '12' }, /gasses: this is a danger/, true],
    ['MS-05', { volts: '15' }, { system: '12' }, /gasses/, false],
    ['MS-05', { volts: '30.1' }, { system: '24' }, /gasses/, true],
    ['MS-05', { volts: '29.9' }, { system: '24' }, /gasses/, false],
    ['MS-05', { volts: '13' }, { system: '12', machine: 'dynamo' }, /A dynamo is judged by its maker/, true],
    ['MS-06', { opens: '50/51' }, {}, /Opened at 50, 51 kPa/, true],
    ['MS-06', { opens: '50' }, {}, /Opened at/, false],
    ['MS-06', { vacuumValve: 'stuck shut' }, {}, /collapses the hose/, true],
    ['MS-06', { vacuumValve: 'stuck open' }, {}, /collapses the hose/, false],
    ['MS-07', { applied: '90', after: '80' }, {}, /nothing wet was noted outside/, true],
    ['MS-07', { applied: '90', after: '80', wet: 'water pump' }, {}, /nothing wet/, false],
    ['MS-07', { applied: '90', after: '90' }, {}, /nothing wet/, false],
    // 4.5 kPa in 30 min are 1.5 in ten; 2 kPa are not more than 2; 2 °C alone are 1.3 kPa at 20 °C, 8 °C are 5.2.
    ['MS-07', { applied: '90', after: '85.5', time: '30' }, {}, /in all it fell by more than 2 kPa/, true],
    ['MS-07', { applied: '90', after: '88', time: '30' }, {}, /in all it fell/, false],
    ['MS-07', { applied: '90', after: '85.5', time: '10' }, {}, /in all it fell/, false],
    ['MS-07', { applied: '90', after: '85.5', time: '30', temperatureChange: '-2' }, {}, /in all it fell/, true],
    ['MS-07', { applied: '90', after: '85.5', time: '30', temperatureChange: '-8' }, {}, /in all it fell/, false],
    ['MS-08', { cap: '50', glycol: '50' }, {}, /sea level is taken/, true],
    ['MS-08', { cap: '50', glycol: '50' }, { altitude: '300' }, /sea level is taken/, false],
    ['MS-08', { cap: '50', glycol: '50', highest: '90' }, {}, /hotter than any gauge/, true],
    ['MS-09', { colour: 'no change' }, { loss: 'yes' }, /never closes the suspicion/, true],
    ['MS-09', { colour: 'no change' }, {}, /never closes the suspicion/, false],
    ['MS-09', { colour: 'turned yellow' }, {}, /where it gets in is not shown.*It can mislead/, true],
    ['MS-10', { raw: '24/17/17/24' }, {}, /Cylinders 2 and 3 are low side by side/, true],
    ['MS-10', { raw: '24/18/18/24' }, {}, /side by side/, false],
    ['MS-10', { raw: '24/17/24/17' }, {}, /side by side/, false],
    ['MS-10', { raw: '24/24' }, {}, /Lowest/, false],
    ['MS-11', { supply: '6', cylinder: '4', heard: 'exhaust' }, {}, /the exhaust valve/, true],
    ['MS-11', { supply: '6', cylinder: '4', heard: 'neighbouring cylinder' }, {}, /gasket between/, true],
    ['MS-12', { nominal: '100', diameters: '100.3/100', steps: '0.25' }, {}, /None .* it needs 100.350 mm/, true],
    ['MS-12', { nominal: '100', diameters: '100.1/100', steps: '0.25' }, {}, /It needs 100.150 mm to clean up/, true],
    ['MS-12', { diameters: '100/100; 100/100' }, {}, /Fewer than six/, true],
    ['MS-12', { diameters: '100/100; 100/100; 100/100' }, {}, /Fewer than six/, false],
    ['MS-12', { diameters: '100/100' }, { temperature: '30' }, /brought to 20 °C, for iron/, true],
    ['MS-12', { diameters: '100/100' }, {}, /brought to 20 °C/, false],
    ['MS-13', { points: '0 0 0; 1 1 0' }, {}, /three points or more that do not lie on one line/, true],
    ['MS-13', { straightedge: '0.05', thickness: '100' }, {}, /nozzle protrusion/, true],
    ['MS-14', { heights: '0.10/0.14' }, {}, /Tilted/, true],
    ['MS-14', { heights: '0.10/0.12' }, {}, /Tilted/, false],
    ['MS-15', { bore: '100', skirt: '99.9', boreTemperature: '20' }, {}, /20 °C is taken/, true],
    ['MS-15', { bore: '100', skirt: '99.9', skirtTemperature: '20' }, {}, /20 °C is taken/, true],
    ['MS-15', { bore: '100', skirt: '99.9', boreTemperature: '20', skirtTemperature: '20' }, {}, /is taken/, false],
    ['MS-16', { guide: '9.6', stem: '9.5' }, {}, /Intake or exhaust was not said/, true],
    ['MS-16', { guide: '9.6', stem: '9.5', valve: 'intake' }, {}, /was not said/, false],
    ['MS-16', { recession: '1' }, {}, /was not said/, false],
    ['MS-17', { diameters: '69.5/70', whenNew: '70', steps: '0.25' }, {}, /None of the undersizes/, true],
    ['MS-17', { diameters: '69.9/70', whenNew: '70', steps: '0.25' }, {}, /None of the undersizes/, false],
    ['MS-18', { leakBack: '0/0/5' }, {}, /no ratio to it/, true],
    ['MS-18', { leakBack: '0/5/5' }, {}, /no ratio to it/, false],
    ['MS-19', { drops: '20', time: '1' }, {}, /volume of a drop or the kind of fluid is needed/, true],
    ['MS-19', { drops: '20', time: '1', fluid: 'like water' }, {}, /is needed/, false],
    // US Army PMCS introductions, as TM 5-3805-290-23-2.
    ['MS-19', { class: 'I' }, {}, /Class I: wet, no drops/, true],
    ['MS-19', { class: 'III' }, {}, /Class III: drops form and fall/, true],
    ['MS-19', { wetArea: 'a hand wide' }, {}, /where it leaks, not how much/, true],
    ['MS-19', { what: 'fuel' }, {}, /mended before the engine starts/, true],
    ['MS-19', { what: 'oil' }, {}, /mended before the engine starts/, false],
    ['MS-20', { drift: '20', load: 'pushes rod in' }, {}, /nowhere to go/, true],
    ['MS-20', { drift: '20', load: 'pulls rod out' }, {}, /can let a pulled rod out/, true],
    ['MS-20', { drift: '0', load: 'pushes rod in' }, {}, /nowhere to go/, false],
    ['MS-22', { speed: '26', distance: '30' }, {}, /hold up to 25 km\/h/, true],
    ['MS-22', { speed: '25', distance: '30' }, {}, /hold up to 25 km\/h/, false],
    ['MS-23', { reading: '5' }, { meter: 'dead' }, /the hours are an estimate/, true],
    ['MS-23', { reading: '5' }, { meter: 'runs' }, /an estimate/, false],
    ['MS-23', { series: '1000 10; 1100 12' }, {}, /Two readings give a straight difference only/, true],
    ['MS-23', { series: '1000 10; 1100 12; 1200 14' }, {}, /straight difference only/, false],
    ['MS-23', { series: '900 50; 1000 10; 1100 12', changed: '950' }, {}, /changed are left out: 1/, true],
    ['MS-23', { series: '1000 10; 1100 12; 1200 14' }, {}, /left out/, false],
    ['MS-23', { series: '1000 10; 1100 12; 1200 14', most: '14' }, {}, /at the limit or past it/, true],
    ['MS-23', { series: '1000 10; 1100 8; 1200 6; 1300 4', most: '14' }, {}, /move away from the limit/, true],
    ['MS-23', { series: '1000 10; 1100 12', most: '20' }, {}, /cannot be told from 2 readings.*would say 400 h/, true],
    ['MS-23', { series: '1000 10; 1100 8', most: '20' }, {}, /would say/, false],
    ['MS-26', { glycol: '0' }, {}, /Plain water/, true],
    ['MS-26', { glycol: '1' }, {}, /Plain water/, false],
    ['MS-26', { glycol: '61' }, {}, /freezes warmer again/, true],
    ['MS-26', { glycol: '60' }, {}, /freezes warmer again/, false],
    ['MS-27', { rise: '500', over: '10' }, {}, /Rising oil is fuel or coolant/, true],
    ['MS-27', { rise: '500', added: '600', over: '10' }, {}, /Falling oil is burnt or lost/, true],
    ['MS-27', { rise: '500', added: '500', over: '10' }, {}, /oil is/, false],
    ['MS-29', { bubbles: 'none', temperature: '59' }, {}, /repeat it hot/, true],
    ['MS-29', { bubbles: 'none' }, {}, /repeat it hot/, true],
    ['MS-29', { bubbles: 'none', temperature: '60' }, {}, /repeat it hot/, false],
    ['MS-29', { bubbles: 'none' }, {}, /does not rule out a crack/, true],
    ['MS-29', { bubbles: 'seen' }, {}, /does not rule out/, false],
    ['MS-29', { bubbles: 'none', pressure: '500', after: '490', time: '10' }, {}, /It fell without bubbles/, true],
    ['MS-29', { bubbles: 'none', pressure: '500', after: '500', time: '10' }, {}, /It fell without bubbles/, false],
    ['MS-29', { bubbles: 'seen', pressure: '500', after: '490', time: '10' }, {}, /It fell without bubbles/, false],
    // NIOSH: never more than 200 ppm.
    ['MS-30', { reading: '201', where: 'at the seat' }, {}, /nobody stays/, true],
    ['MS-30', { reading: '5/201/5' }, {}, /nobody stays/, true],
    ['MS-30', { reading: '200', where: 'at the seat' }, {}, /nobody stays/, false],
    ['MS-30', { reading: '900', where: 'in the exhaust' }, {}, /nobody stays/, false],
    ['MS-30', { reading: '900', where: 'in the exhaust' }, {}, /not air to breathe/, true],
    ['MS-32', { marked: '1', whole: '9' }, { seen: '80' }, /20 % of the face could not be seen/, true],
    ['MS-32', { marked: '1', whole: '9' }, {}, /could not be seen/, false],
    ['MS-32', { marked: '1', whole: '9' }, { seen: '100' }, /could not be seen/, false],
  ];
  it.each(rows)('%s %j %j: %s %s', (sheet, inputs, conditions, words, says) => {
    const outcome = run(sheet, inputs, conditions);
    expect(words.test(outcome.says.join(' '))).toBe(says);
  });
});
