import { systemVolts } from '../conditions.ts';
import { fallbacks } from '../fallbacks.ts';
import { describeSheet } from '../sheet-kind.ts';

export const crankingSheet = describeSheet({
  id: 'MS-03',
  name: 'Cranking',
  about:
    'Voltage, current and speed while the starter turns the engine with its fuel cut. The dip of the first third of a second is noted apart.',
  shelf: 'Battery, starting, charging',
  takenAt: ['ELEC/STR'],
  leavesOpen: {
    passed: ['a bad joint that shows only on some starts'],
    failed: ['whether battery, cables, starter or a tight engine is to blame'],
  },
  version: 1,
  inputs: {
    volts: {
      kind: 'number',
      label: 'Battery voltage, steady',
      unit: 'V',
      possible: [0, 60],
      usual: [6, 26],
      repeats: 'lowest',
    },
    dip: { kind: 'number', label: 'First dip', unit: 'V', possible: [0, 60] },
    current: { kind: 'number', label: 'Current', unit: 'A', possible: [0, 5_000], usual: [20, 2_500] },
    speed: {
      kind: 'number',
      label: 'Engine speed',
      unit: 'rpm',
      possible: [0, 1_000],
      usual: [0, 400],
      because: 'no starter turns an engine so fast',
    },
    usualCurrent: { kind: 'number', label: 'Current the maker gives', unit: 'A', possible: [1, 5_000] },
    neededSpeed: { kind: 'number', label: 'Speed the engine needs', unit: 'rpm', possible: [1, 1_000] },
  },
  conditions: {
    system: systemVolts,
    oilTemperature: { kind: 'number', label: 'Oil temperature', unit: '°C', possible: [-60, 160] },
    fuel: { kind: 'choice', label: 'Fuel', answers: ['cut', 'not cut'] },
  },
  results: {
    volts: {
      usualLimitRule: '0.8 of the system’s voltage at least; common practice',
      unit: 'V',
      formula: 'lowest steady voltage read at the battery posts',
      fallback: fallbacks.voltage,
      needs: ['volts'],
      main: true,
    },
    speed: {
      usualLimitRule: 'the speed the engine needs, as typed; the maker’s',
      unit: 'rpm',
      formula: 'as read',
      fallback: fallbacks.engineSpeed,
      needs: ['speed'],
    },
    current: { unit: 'A', formula: 'as read', fallback: fallbacks.current, needs: ['current'] },
    resistance: { unit: 'mΩ', formula: 'battery voltage ÷ current', needs: ['volts', 'current'] },
  },
  cautions: ['CAU-08', 'CAU-14', 'CAU-38'],
  shown: 'lines',
});
