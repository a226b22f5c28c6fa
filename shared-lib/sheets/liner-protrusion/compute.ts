import { type ComputedLine, sheet } from '../sheet-kind.ts';
import { meanOf, spreadOf } from '../two-point-sizes.ts';
import { linerProtrusionSheet } from './sheet.ts';

export const linerProtrusion = sheet(linerProtrusionSheet, (given) => {
  const rows = given.rows('heights');
  if (rows === null) return { lines: [] };
  const averages = rows.map(meanOf);
  const tilts = rows.map(spreadOf);
  const lines: ComputedLine<keyof typeof linerProtrusionSheet.results>[] = [
    { of: 'average', value: averages.length === 1 ? (averages[0] ?? Number.NaN) : averages },
    { of: 'tilt', value: tilts.length === 1 ? (tilts[0] ?? Number.NaN) : tilts },
  ];
  if (averages.length > 1) {
    const steps = averages.slice(1).map((each, index) => Math.abs(each - (averages[index] ?? each)));
    lines.push({ of: 'step', value: steps.length === 1 ? (steps[0] ?? Number.NaN) : steps });
    lines.push({ of: 'range', value: spreadOf(averages), limit: null });
  }
  const reason =
    given.word('clamped') === 'no'
      ? 'the liner was not clamped'
      : given.word('cleaned') === 'no'
        ? 'the counterbore was not cleaned'
        : null;
  return {
    lines,
    says:
      Math.max(...tilts) > 0.03
        ? [
            'Tilted: clean, refit a quarter turn on and read again. Tilt that stays at the block is the counterbore; tilt that turns with the liner is its flange.',
          ]
        : [],
    picture: { kind: 'bars', unit: 'mm', values: averages, labels: averages.map((_, index) => String(index + 1)) },
    ...(reason === null ? {} : { void: reason }),
  };
});
