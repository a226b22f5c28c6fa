/** Everything that was chosen by trying; `version` goes into the origin of every traced mark. */
export const tracerVersion = '2';

export interface TraceSettings {
  /** Half-widths of lines looked for, px. */
  readonly sigmas: readonly number[];
  readonly spotPenalty: number;
  readonly contrastRadius: number;
  readonly noiseFloor: number;
  /** How far along a line its pixels back each other, px. */
  readonly reachPx: number;
  /** Coherent strength from which a line is as good as it gets. */
  readonly fullStrength: number;
  /** What following a sure line costs against bare surface. */
  readonly lineCost: number;
  readonly rodPx: number;
  readonly rodStrongFrom: number;
  /** Straightness from which a line starts, and at which it has, its whole penalty. */
  readonly straightFrom: number;
  readonly straightFull: number;
  /** Share of its strength that a straight line loses. */
  readonly straightPenalty: number;
}

/** Chosen on the photographs of cracks named in tests/bench/tracing, by leaving out one source after the other. */
export const traceSettings: TraceSettings = {
  sigmas: [1, 2],
  spotPenalty: 0.4,
  contrastRadius: 40,
  noiseFloor: 0.5,
  reachPx: 7,
  fullStrength: 2,
  lineCost: 0.06,
  rodPx: 210,
  rodStrongFrom: 1.4,
  straightFrom: 0.6,
  straightFull: 0.85,
  straightPenalty: 0.95,
};
