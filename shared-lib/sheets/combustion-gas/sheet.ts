import { describeSheet } from '../sheet-kind.ts';

export const combustionGasSheet = describeSheet({
  id: 'MS-09',
  name: 'Combustion gas in the coolant',
  about:
    'Test fluid over the open neck changes colour where exhaust gas bubbles through. It shows that there is a path, never where.',
  shelf: 'Cooling',
  takenAt: ['COOL/RAD/NECK', 'ENG/HG'],
  leavesOpen: {
    passed: [
      { what: 'a crack or leak that closes when cold and opens hot', unless: { field: 'coolant', atLeast: 70 } },
      'a leak that opens only under load or boost',
      'a leak below the rings at top dead centre, as a hole in a liner',
      'a shut thermostat, so that no gas reached the neck',
    ],
    failed: ['where the gas gets in: gasket, head, liner or pre-chamber'],
  },
  version: 1,
  inputs: {
    load: { kind: 'text', label: 'Load and speed' },
    colour: { kind: 'choice', label: 'Fluid', answers: ['no change', 'turned green or slowly', 'turned yellow'] },
    seconds: { kind: 'number', label: 'Seconds to change', unit: 's', possible: [0, 3_600] },
    bubbles: { kind: 'number', label: 'Bubbles at the neck', unit: '', possible: [0, 10_000] },
    minutes: { kind: 'number', label: 'Run for', unit: 'min', possible: [0, 600] },
  },
  conditions: {
    fluidFresh: { kind: 'choice', label: 'Breath turns the fluid', answers: ['yes', 'no'] },
    levelLowered: { kind: 'choice', label: 'Level lowered below the sampler', answers: ['yes', 'no'] },
    coolant: { kind: 'number', label: 'Coolant temperature', unit: '°C', possible: [-40, 140] },
    loss: { kind: 'choice', label: 'Coolant is lost without a known reason', answers: ['yes', 'no'] },
  },
  results: {
    'combustion gas': {
      suggests: 'combgas',
      unit: '',
      formula: 'colour of the test fluid',
      needs: ['colour'],
      main: true,
      looksFor: true,
    },
  },
  cautions: ['CAU-06', 'CAU-09', 'CAU-37'],
  shown: 'lines',
});
