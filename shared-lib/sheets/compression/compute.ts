import { airKpa } from '../conditions.ts';
import { type ComputedLine, sheet } from '../sheet-kind.ts';
import { handbookPressureKpa, seaLevelKpa } from '../standards/atmosphere.ts';
import { mostSpeedSpreadShare, warmC } from './limits.ts';
import { compressionSheet } from './sheet.ts';

/** Gauge pressure brought to sea level: the same ratio on the standard's air. All bar. */
const toSeaLevel = (gaugeBar: number, airBar: number, seaBar: number): number =>
  ((gaugeBar + airBar) * seaBar) / airBar - seaBar;

export const compression = sheet(
  compressionSheet,
  (given) => {
    const raw = given.list('raw');
    if (raw === null) return { lines: [] };
    const altitudeM = given.number('altitude');
    const [lowest, highest] = [Math.min(...raw), Math.max(...raw)];
    const lines: ComputedLine<keyof typeof compressionSheet.results>[] = [
      {
        of: 'corrected',
        value: raw.map((each) => toSeaLevel(each, airKpa(altitudeM) / 100, seaLevelKpa / 100)),
        crossCheck: {
          value: raw.map((each) => toSeaLevel(each, handbookPressureKpa(altitudeM ?? 0) / 100, 1.013)),
          formula: 'the same with 1.013 bar and the handbook’s rounded air',
        },
      },
    ];
    if (raw.length > 1 && highest > 0) {
      const spread = ((highest - lowest) / highest) * 100;
      lines.push(
        { of: 'spread', value: spread, crossCheck: { value: spread, formula: 'the same' } },
        { of: 'difference', value: highest - lowest },
        { of: 'lowest of highest', value: (lowest / highest) * 100 },
      );
    }
    const speeds = given.list('speeds');
    const unlike =
      speeds !== null && Math.min(...speeds) < Math.max(...speeds) * (1 - mostSpeedSpreadShare) * (1 - 1e-9);
    const coolant = given.number('coolant');
    const reason = unlike
      ? 'the cranking speeds differ by more than 10 %'
      : coolant !== null && coolant < warmC
        ? `the engine was colder than ${warmC} °C`
        : given.word('intake') === 'closed'
          ? 'the intake was closed'
          : given.word('fuel') === 'not shut'
            ? 'the engine may have fired: the fuel was not shut'
            : null;
    return {
      lines,
      says: [...(highest > lowest ? [`Lowest: cylinder ${raw.indexOf(lowest) + 1}.`] : []), ...lowNeighbours(raw)],
      picture: { kind: 'bars', unit: 'bar', values: raw, labels: raw.map((_, index) => String(index + 1)) },
      ...(reason === null ? {} : { void: reason }),
    };
  },
  (given) => {
    const [raw, speeds] = [given.list('raw'), given.list('speeds')];
    return raw !== null && speeds !== null && speeds.length !== raw.length
      ? [
          {
            input: 'speeds',
            weight: 'impossible',
            what: `There are ${raw.length} pressures and ${speeds.length} speeds.`,
          },
        ]
      : [];
  },
);

/** Two low cylinders side by side share a gasket web. Low: more than a quarter under the highest. */
function lowNeighbours(raw: readonly number[]): string[] {
  const low = raw.map((each) => each < 0.75 * Math.max(...raw));
  const pairs = low.flatMap((each, index) =>
    each && low[index + 1] === true ? [`${index + 1} and ${index + 2}`] : [],
  );
  return pairs.map((pair) => `Cylinders ${pair} are low side by side: look at the gasket between them.`);
}
