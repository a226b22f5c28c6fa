import type { FallbackUncertainty } from './sheet-kind.ts';

/**
 * How far a bench reading can be off when neither instrument nor mechanic has said.
 * Source: the handbook's quantity dictionary; common practice, no source.
 */
export const fallbacks = {
  size: { absolute: 0.01 },
  clearance: { absolute: 0.02 },
  recession: { absolute: 0.05 },
  flatness: { absolute: 0.03 },
  crackLength: { absolute: 0.5 },
  drift: { absolute: 1 },
  pressure: { share: 0.02 },
  pressureHeld: { absolute: 2 },
  compression: { absolute: 0.5 },
  spread: { absolute: 2 },
  leakage: { absolute: 3 },
  ratio: { absolute: 0.1 },
  voltage: { absolute: 0.02 },
  voltageDrop: { absolute: 0.01 },
  current: { share: 0.02 },
  engineSpeed: { absolute: 10 },
  temperature: { absolute: 2 },
  glycol: { absolute: 3 },
  acidity: { absolute: 0.3 },
  levelChange: { share: 0.2 },
  leakRate: { share: 0.1 },
  deceleration: { absolute: 0.2 },
  creep: { absolute: 5 },
  angle: { absolute: 1 },
  elongation: { absolute: 0.2 },
  coverage: { absolute: 5 },
} as const satisfies Record<string, FallbackUncertainty>;
