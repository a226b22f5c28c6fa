import { type CheckProblem, type ComputedLine, sheet } from '../sheet-kind.ts';
import { countedOffShare, dropKinds, dropVolumeMl, usGallonMl } from './limits.ts';
import { leakRateSheet } from './sheet.ts';

/** Source: US Army PMCS introductions, as TM 5-3805-290-23-2. */
const classes: ReadonlyMap<string, string> = new Map([
  ['I', 'Class I: wet, no drops.'],
  ['II', 'Class II: drops form and do not fall.'],
  ['III', 'Class III: drops form and fall.'],
]);

export const leakRate = sheet(
  leakRateSheet,
  (given) => {
    const [drops, caught, minutes] = [given.number('drops'), given.number('catch'), given.number('time')];
    const dropMinutes = given.number('dropsTime') ?? minutes;
    const kind = dropKinds.find((each) => each === given.word('fluid'));
    const typedVolume = given.number('dropVolume');
    const volume = typedVolume ?? (kind === undefined ? null : dropVolumeMl[kind]);
    const lines: ComputedLine<keyof typeof leakRateSheet.results>[] = [];
    const says: string[] = [];
    const byCatch = caught === null || minutes === null ? null : caught / minutes;
    const byDrops = drops === null || dropMinutes === null || volume === null ? null : (drops * volume) / dropMinutes;
    const rate = byCatch ?? byDrops;
    if (rate !== null) {
      const off =
        byCatch === null && typedVolume === null
          ? (value: number) => ({
              uncertainty: {
                value: countedOffShare * value,
                from: 'drops of a usual size: good to a factor of one and a half',
              },
            })
          : () => ({});
      const check = (times: number) =>
        byCatch !== null && byDrops !== null
          ? { crossCheck: { value: byDrops * times, formula: 'drops × volume of a drop' } }
          : {};
      const add = (of: keyof typeof leakRateSheet.results, value: number, times: number | null) =>
        lines.push({ of, value, ...off(value), ...(times === null ? {} : check(times)) });
      add('rate', rate, 1);
      add('hourly', rate * 60, 60);
      const running = given.number('runningMinutes');
      if (running !== null) add('a day', rate * running, running);
      add('a day without a stop', (rate * 1440) / usGallonMl, 1440 / usGallonMl);
      const spare = given.number('spare');
      if (spare !== null && rate > 0) add('hours to the low mark', spare / (rate * 60), null);
    } else if (drops !== null && volume === null) {
      says.push('The volume of a drop or the kind of fluid is needed; count drops into 1 mL to know it.');
    }
    const leakClass = classes.get(given.word('class') ?? '');
    if (leakClass !== undefined) says.push(leakClass);
    if (given.word('wetArea') !== null) says.push('The wet area shows where it leaks, not how much.');
    const what = given.word('what');
    if (what !== null) {
      const fuel = what === 'fuel';
      lines.push({ of: 'fuel leak', seen: fuel });
      if (fuel) says.push('Fuel: any leak is mended before the engine starts.');
    }
    return { lines, says };
  },
  (given) => {
    const problems: CheckProblem[] = [];
    const drops = given.number('drops');
    if (drops !== null && !Number.isInteger(drops)) {
      problems.push({ input: 'drops', weight: 'odd', what: 'Drops are counted whole.' });
    }
    return problems;
  },
);
