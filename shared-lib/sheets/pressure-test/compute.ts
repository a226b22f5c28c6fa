import { fallbacks } from '../fallbacks.ts';
import { type CheckProblem, type ComputedLine, sheet } from '../sheet-kind.ts';
import { shortestMinutes, usualTestC } from './limits.ts';
import { pressureTestSheet } from './sheet.ts';

export const pressureTest = sheet(
  pressureTestSheet,
  (given) => {
    const lines: ComputedLine<keyof typeof pressureTestSheet.results>[] = [];
    const says: string[] = [];
    const [pressure, after, minutes, temperatureC] = [
      given.number('pressure'),
      given.number('after'),
      given.number('time'),
      given.number('temperature'),
    ];
    const bubbles = given.word('bubbles');
    if (bubbles !== null) {
      const seen = bubbles === 'seen';
      const tooShort = !seen && minutes !== null && minutes < shortestMinutes;
      lines.push({
        of: 'leak path',
        seen,
        ...(tooShort ? { void: `under ${shortestMinutes} minutes a slow leak does not show` } : {}),
      });
      if (!seen) {
        says.push(
          'Nothing found does not rule out a crack that opens only hot or clamped, or one above or outside the passages under test.',
        );
        if (temperatureC === null || temperatureC < usualTestC[0])
          says.push('Cold water closes some cracks: repeat it hot.');
      }
    }
    if (pressure !== null && after !== null && minutes !== null) {
      lines.push({
        of: 'fall',
        value: ((pressure - after) / minutes) * 10,
        uncertainty: {
          value: (fallbacks.pressureHeld.absolute / minutes) * 10,
          from: 'usual for such a gauge (2 kPa) over the test; common practice, no source',
        },
      });
      if (pressure > after && bubbles === 'none')
        says.push('It fell without bubbles: look at the fixture and at places not watched.');
    }
    return { lines, says, ...(given.word('fixture') === 'no' ? { void: 'the fixture was not proved tight' } : {}) };
  },
  (given) => {
    const problems: CheckProblem[] = [];
    const [pressure, after, most] = [given.number('pressure'), given.number('after'), given.number('mostAllowed')];
    if (pressure !== null && after !== null && after > pressure) {
      problems.push({ input: 'after', weight: 'impossible', what: 'The pressure cannot rise by itself.' });
    }
    if (pressure !== null && most !== null && pressure > most) {
      problems.push({ input: 'pressure', weight: 'odd', what: 'More than the maker allows: it can burst core plugs.' });
    }
    return problems;
  },
);
