import { airKpa } from '../conditions.ts';
import { fallbacks } from '../fallbacks.ts';
import { type CheckProblem, type ComputedLine, sheet } from '../sheet-kind.ts';
import { handbookPressureKpa } from '../standards/atmosphere.ts';
import { mostFallKpa, shortestMinutes } from './limits.ts';
import { coolingPressureHoldSheet } from './sheet.ts';

const zeroCelsiusK = 273.15;

export const coolingPressureHold = sheet(
  coolingPressureHoldSheet,
  (given) => {
    const [applied, after, minutes] = [given.number('applied'), given.number('after'), given.number('time')];
    if (applied === null || after === null) return { lines: [] };
    const airNow = airKpa(given.number('altitude'));
    const changeK = given.number('temperatureChange') ?? 0;
    const startK = zeroCelsiusK + (given.number('startTemperature') ?? 20);
    const lines: ComputedLine<keyof typeof coolingPressureHoldSheet.results>[] = [];
    const says: string[] = [];
    if (minutes !== null) {
      const byTemperature = ((applied + airNow) * Math.abs(changeK)) / startK;
      const gauge = fallbacks.pressureHeld.absolute;
      const off = Math.max(gauge, byTemperature);
      const fall = ((applied - after) / minutes) * 10;
      if (fall <= mostFallKpa && applied - after > Math.max(mostFallKpa * (1 + 1e-9), byTemperature)) {
        says.push('Slowly, but in all it fell by more than 2 kPa: a sound system does not, however long the test.');
      }
      lines.push({
        of: 'fall',
        value: fall,
        uncertainty: {
          value: (off / minutes) * 10,
          from:
            byTemperature > gauge
              ? `what ${Math.abs(changeK)} °C alone does to the pressure, over the test`
              : 'usual for such a gauge (2 kPa) over the test; common practice, no source',
        },
        ...(minutes < shortestMinutes * (1 - 1e-9)
          ? { void: `a test shorter than ${shortestMinutes} minutes cannot show a slow leak` }
          : {}),
      });
    }
    const gasSpace = given.number('gasSpace');
    if (gasSpace !== null) {
      const lostMl = (air: number) =>
        gasSpace * (((applied + air) / (after + air)) * ((startK + changeK) / startK) - 1);
      const [lost, handbook] = [lostMl(airNow), lostMl(handbookPressureKpa(given.number('altitude') ?? 0))];
      const formula = 'air pressure by the handbook’s rounded formula';
      lines.push({ of: 'lost', value: lost, crossCheck: { value: handbook, formula } });
      if (minutes !== null) {
        lines.push(
          { of: 'rate', value: lost / minutes, crossCheck: { value: handbook / minutes, formula } },
          { of: 'in 8 h', value: (lost / minutes) * 0.48, crossCheck: { value: (handbook / minutes) * 0.48, formula } },
        );
      }
    }
    if (applied > after && given.word('wet') === null) {
      says.push(
        'It falls and nothing wet was noted outside: look inside, at the oil level and into the cylinders, turning by hand.',
      );
    }
    return { lines, says };
  },
  (given) => {
    const problems: CheckProblem[] = [];
    const [applied, after, rating] = [given.number('applied'), given.number('after'), given.number('capRating')];
    const warmer = (given.number('temperatureChange') ?? 0) > 0;
    if (applied !== null && after !== null && after > applied && !warmer) {
      problems.push({
        input: 'after',
        weight: 'impossible',
        what: 'The pressure cannot rise by itself unless the system warms up; note the change of temperature.',
      });
    }
    if (applied !== null && rating !== null && applied > rating) {
      problems.push({
        input: 'applied',
        weight: 'odd',
        what: 'More than the cap is rated for: hoses and core plugs are not made for it.',
      });
    }
    return problems;
  },
);
