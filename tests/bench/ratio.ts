/** One figure: ours against a floor that ran in the same process, in turns, so that a busy machine slows both alike. */
export interface Figure {
  readonly what: string;
  readonly oursMs: readonly number[];
  readonly floorMs: readonly number[];
  /** What the floor is, in a few words. */
  readonly floor: string;
  /** The most that the ratio should be. */
  readonly target: number;
}

/** The value below which a share of the sorted values lies. */
export const quantile = (values: readonly number[], share: number): number => {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
};

const median = (values: readonly number[]): number => quantile(values, 0.5);

const ms = (value: number): string => value.toFixed(value < 10 ? 2 : 1);

const spread = (values: readonly number[]): string => `${ms(Math.min(...values))} to ${ms(Math.max(...values))}`;

/** Runs both in turns, ours first in every other round. */
export const inTurns = async (
  rounds: number,
  ours: () => Promise<number> | number,
  floor: () => Promise<number> | number,
): Promise<{ oursMs: number[]; floorMs: number[] }> => {
  const oursMs: number[] = [];
  const floorMs: number[] = [];
  for (let round = 0; round < rounds; round += 1) {
    const first = round % 2 === 0;
    if (first) oursMs.push(await ours());
    floorMs.push(await floor());
    if (!first) oursMs.push(await ours());
  }
  return { oursMs, floorMs };
};

export const timed = async (work: () => unknown): Promise<number> => {
  const began = performance.now();
  await work();
  return performance.now() - began;
};

/** One line a figure, the ratio of medians first. */
export const printFigure = ({ what, oursMs, floorMs, floor, target }: Figure): void => {
  const ratio = median(oursMs) / median(floorMs);
  console.log(
    `${what}: ${ratio.toFixed(2)} x (at most ${target}); ours ${ms(median(oursMs))} ms (${spread(oursMs)}), ${floor} ${ms(median(floorMs))} ms (${spread(floorMs)}), ${oursMs.length} rounds in turns`,
  );
};
