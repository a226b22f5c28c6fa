import { fallbacks } from '../fallbacks.ts';
import { type CheckProblem, type ComputedLine, sheet } from '../sheet-kind.ts';
import { deceleration, parkingMinutes, slowKmh, standardGravity } from './limits.ts';
import { brakesSheet } from './sheet.ts';

const handbookGravity = 9.81;

export const brakes = sheet(
  brakesSheet,
  (given) => {
    const [speed, distance] = [given.number('speed'), given.number('distance')];
    const lines: ComputedLine<keyof typeof brakesSheet.results>[] = [];
    const says: string[] = [];
    if (speed !== null && distance !== null) {
      const metresPerSecond = speed / 3.6;
      const braking = distance - metresPerSecond * (given.number('reaction') ?? 0);
      const rate = metresPerSecond ** 2 / (2 * braking);
      const unlike =
        given.word('pedals') === 'one pedal' || given.word('pedals') === 'not latched'
          ? 'the pedals were not latched together'
          : given.word('surface') === 'wet' || given.word('surface') === 'loose'
            ? 'the ground was not dry and firm'
            : null;
      lines.push(
        {
          of: 'deceleration',
          value: rate,
          limit: speed <= slowKmh ? deceleration : null,
          ...(unlike === null ? {} : { void: unlike }),
        },
        {
          of: 'of g',
          value: (rate / standardGravity) * 100,
          crossCheck: { value: (rate / handbookGravity) * 100, formula: 'gravity taken as 9.81 m/s²' },
        },
      );
      if (speed > slowKmh)
        says.push(`The usual figures hold up to ${slowKmh} km/h; above that local law or the maker decides.`);
    }
    const [mass, slope] = [given.number('mass'), given.number('slope')];
    if (mass !== null && slope !== null) {
      const share = Math.sin(Math.atan(slope / 100));
      lines.push({
        of: 'holding force needed',
        value: (mass * standardGravity * share) / 1000,
        crossCheck: { value: (mass * handbookGravity * share) / 1000, formula: 'gravity taken as 9.81 m/s²' },
      });
    }
    const [creep, minutes] = [given.number('creep'), given.number('time')];
    if (creep !== null) {
      const moved = creep > fallbacks.creep.absolute;
      const tooShort = !moved && minutes !== null && minutes < parkingMinutes;
      lines.push({
        of: 'creep',
        value: creep,
        seen: moved,
        ...(tooShort ? { void: `it was watched for less than ${parkingMinutes} minutes` } : {}),
      });
    }
    const reserve = given.number('pedalReserve');
    if (reserve !== null) lines.push({ of: 'pedal reserve', value: reserve });
    const pull = given.word('pull');
    if (pull !== null) lines.push({ of: 'pulls to one side', seen: pull !== 'straight' });
    return { lines, says };
  },
  (given) => {
    const problems: CheckProblem[] = [];
    const [speed, distance, reaction] = [given.number('speed'), given.number('distance'), given.number('reaction')];
    if (speed !== null && distance !== null && reaction !== null && (speed / 3.6) * reaction >= distance) {
      problems.push({
        input: 'reaction',
        weight: 'impossible',
        what: 'The way of the reaction time is longer than the whole distance.',
      });
    }
    if (speed !== null && distance !== null && (speed / 3.6) ** 2 / (2 * distance) > 12) {
      problems.push({
        input: 'distance',
        weight: 'impossible',
        what: 'No wheel brakes so hard: it would need more grip than tyres have.',
      });
    }
    return problems;
  },
);
