import { hoursToLimit, trendOf } from '../../trends/trend.ts';
import { type CheckProblem, type ComputedLine, type SheetPicture, sheet } from '../sheet-kind.ts';
import { confidence, hoursInADay } from './limits.ts';
import { hoursAndTrendSheet } from './sheet.ts';

export const hoursAndTrend = sheet(
  hoursAndTrendSheet,
  (given) => {
    const lines: ComputedLine<keyof typeof hoursAndTrendSheet.results>[] = [];
    const says: string[] = [];
    const reading = given.number('reading');
    const dead = given.word('meter') === 'dead';
    if (reading !== null) {
      const hours = reading + (given.number('offset') ?? 0);
      lines.push({ of: 'hours', value: hours });
      if (dead) says.push('The meter stands still: the hours are an estimate.');
      const [before, days] = [given.number('before'), given.number('days')];
      if (before !== null && days !== null && days > 0 && hours >= before) {
        lines.push({ of: 'hours a day', value: (hours - before) / days });
      }
    }
    const rows = given.rows('series');
    if (rows === null) return { lines, says };
    const readings = rows.map(([hours = Number.NaN, value = Number.NaN]) => ({ hours, value }));
    const trend = trendOf(readings, given.list('changed') ?? [], confidence);
    const unit = given.word('seriesUnit') ?? '';
    if (trend.leftOut > 0) says.push(`Readings before the part was changed are left out: ${trend.leftOut}.`);
    if (trend.perHour !== null) lines.push({ of: 'change in 100 h', value: trend.perHour * 100 });
    if (trend.used.length === 2) says.push('Two readings give a straight difference only.');
    if (trend.growing !== null) lines.push({ of: 'growth', seen: trend.growing, notSeen: 'no growth shown' });
    const [most, least] = [given.number('most'), given.number('least')];
    const limit = most !== null ? { max: most } : least !== null ? { min: least } : null;
    if (limit !== null) {
      const told = hoursToLimit(trend, limit, confidence);
      const last = trend.used.at(-1);
      const handbook =
        last === undefined || trend.perHour === null || trend.perHour === 0
          ? null
          : ((most ?? least ?? 0) - last.value) / trend.perHour;
      if (told.state === 'told') {
        lines.push(
          {
            of: 'hours to the limit',
            value: told.hours,
            ...(handbook === null
              ? {}
              : { crossCheck: { value: handbook, formula: '(limit − last reading) ÷ slope' } }),
          },
          { of: 'earliest', value: told.from },
          { of: 'latest', value: told.to },
        );
      } else if (told.state === 'cannot be told') {
        says.push(`Hours to the limit: ${told.why}.`);
        if (handbook !== null && handbook > 0) {
          says.push(
            `A plain straight line from the last reading would say ${Math.round(handbook)} h; the readings do not bear it out.`,
          );
        }
      } else if (told.state === 'past it') says.push('The latest reading is at the limit or past it.');
      else says.push('The readings move away from the limit.');
    }
    const picture: SheetPicture = { kind: 'trend', unit, points: trend.used, limit: most ?? least };
    return { lines, says, picture };
  },
  (given) => {
    const problems: CheckProblem[] = [];
    const [reading, before, days] = [given.number('reading'), given.number('before'), given.number('days')];
    const hours = reading === null ? null : reading + (given.number('offset') ?? 0);
    if (hours !== null && before !== null && hours < before) {
      problems.push({
        input: 'reading',
        weight: 'odd',
        what: 'Lower than at the last visit: was the meter changed, replaced, misread, or is it another machine?',
      });
    }
    if (hours !== null && before !== null && days !== null && days > 0 && (hours - before) / days > hoursInADay) {
      problems.push({
        input: 'reading',
        weight: 'impossible',
        what: 'A day has 24 hours; so many cannot have been run since.',
      });
    }
    return problems;
  },
);
