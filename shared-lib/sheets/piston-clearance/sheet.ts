import { fallbacks } from '../fallbacks.ts';
import { describeSheet } from '../sheet-kind.ts';
import { metals } from '../standards/expansion.ts';

const size = { unit: 'mm', possible: [5, 1_000], usual: [40, 300] } as const;
const warmth = { unit: '°C', possible: [-40, 150] } as const;

export const pistonClearanceSheet = describeSheet({
  id: 'MS-15',
  name: 'Piston clearance and ring gap',
  about:
    'Bore less skirt in the thrust direction, both brought to 20 °C; and the end gap of a ring in the unworn part of the bore.',
  shelf: 'Cylinders and head',
  takenAt: ['ENG/PST', 'ENG/RING'],
  leavesOpen: {
    passed: ['a hot clearance lost where heat or oil is wrong'],
    failed: ['whether bore, piston or ring is worn'],
  },
  version: 1,
  inputs: {
    bore: { kind: 'number', label: 'Bore, thrust direction', ...size },
    boreTemperature: { kind: 'number', label: 'Temperature of the block', ...warmth },
    boreMetal: { kind: 'choice', label: 'Block', answers: metals },
    skirt: { kind: 'number', label: 'Piston skirt, thrust direction', ...size },
    skirtTemperature: { kind: 'number', label: 'Temperature of the piston', ...warmth },
    skirtMetal: { kind: 'choice', label: 'Piston', answers: metals },
    endGap: {
      kind: 'number',
      label: 'Ring end gap',
      unit: 'mm',
      possible: [0, 20],
      usual: [0.05, 3],
      repeats: 'highest',
    },
    ring: { kind: 'choice', label: 'Ring', answers: ['new', 'worn'] },
    sideClearance: { kind: 'number', label: 'Ring side clearance', unit: 'mm', possible: [0, 5], usual: [0.01, 0.5] },
  },
  conditions: {},
  results: {
    clearance: {
      suggests: 'wear',
      unit: 'mm',
      formula: 'bore − skirt, each × (1 − expansion × (temperature − 20 °C))',
      from: 'reference temperature of ISO 1; expansion of iron 11, aluminium 22, steel 11.5 millionths, common practice',
      fallback: fallbacks.clearance,
      needs: ['bore', 'skirt'],
      main: true,
    },
    'clearance as read': { unit: 'mm', formula: 'bore − skirt, not brought to 20 °C', needs: ['bore', 'skirt'] },
    'end gap': {
      suggests: 'wear',
      usualLimitRule: 'new ring 0.3 to 0.4 % of the bore, worn ring 1 % at most; common practice',
      unit: 'mm',
      formula: 'as read',
      fallback: fallbacks.clearance,
      needs: ['endGap'],
    },
    'side clearance': { unit: 'mm', formula: 'as read', fallback: fallbacks.clearance, needs: ['sideClearance'] },
  },
  cautions: [],
  shown: 'lines',
});
