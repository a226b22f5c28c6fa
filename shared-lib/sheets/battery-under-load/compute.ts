import { chargeByVolts } from '../battery-at-rest/limits.ts';
import { type ComputedLine, sheet } from '../sheet-kind.ts';
import { lookUp } from '../standards/lookup.ts';
import { handbookLeastVolts, leastVoltsByFahrenheit } from './limits.ts';
import { batteryUnderLoadSheet } from './sheet.ts';

export const batteryUnderLoad = sheet(
  batteryUnderLoadSheet,
  (given) => {
    const cells = (given.number('batteryVolts') ?? 12) / 12;
    const [rating, load, loaded, rest] = [
      given.number('rating'),
      given.number('load'),
      given.number('loaded'),
      given.number('rest'),
    ];
    const temperatureC = given.number('temperature');
    const lines: ComputedLine<keyof typeof batteryUnderLoadSheet.results>[] = [];
    const says: string[] = [];
    if (loaded !== null && temperatureC !== null) {
      const least = lookUp(leastVoltsByFahrenheit, temperatureC * 1.8 + 32) * cells;
      lines.push({
        of: 'voltage under load',
        value: loaded,
        limit: { min: least, source: 'common-practice', cites: 'US Army TM 5-4210-230-14&P, table 5; not the maker’s' },
      });
      says.push(
        `At this temperature at least ${least.toFixed(2)} V; the handbook’s straight line says ${(handbookLeastVolts(temperatureC) * cells).toFixed(2)} V.`,
      );
    }
    if (rest !== null && loaded !== null && load !== null) {
      lines.push({ of: 'internal resistance', value: ((rest - loaded) / load) * 1000 });
    }
    if (load !== null && rating !== null)
      lines.push({ of: 'load against the rating', value: (load / (rating / 2)) * 100 });

    const charge = given.number('charge') ?? (rest === null ? null : lookUp(chargeByVolts, rest / cells));
    const state = given.word('state');
    const unfit = state !== null && state !== 'sound';
    const wrongLoad = load !== null && rating !== null && Math.abs(load / (rating / 2) - 1) > 0.1;
    const reason = unfit
      ? `the battery is ${state}; it must not be loaded`
      : charge !== null && charge < 75
        ? 'the battery was under 75 % charged; charge it and test again'
        : wrongLoad
          ? 'the load was not half the cold-cranking rating'
          : null;
    return { lines, says, ...(reason === null ? {} : { void: reason }) };
  },
  (given) => {
    const [loaded, rest] = [given.number('loaded'), given.number('rest')];
    return loaded !== null && rest !== null && loaded > rest
      ? [{ input: 'loaded', weight: 'impossible', what: 'Under load a battery cannot stand higher than at rest.' }]
      : [];
  },
);
