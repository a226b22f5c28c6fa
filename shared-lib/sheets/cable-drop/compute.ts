import { type CheckProblem, type ComputedLine, sheet } from '../sheet-kind.ts';
import { copperResistanceMohm, handbookCopperResistanceMohm, wireAreaMm2 } from '../standards/copper-cable.ts';
import { type Leg, legs, mostDrop, mostResidualAt12V } from './limits.ts';
import { cableDropSheet } from './sheet.ts';

const sum = (values: readonly number[]): number => values.reduce((total, each) => total + each, 0);

/** Which leg a place is; null where it does not say. */
function legAt(place: string): Leg | null {
  if (/^ELEC\/GND\b/.test(place)) return 'engine-to-frame strap';
  if (/^ELEC\/CBL(@|$)/.test(place)) return 'positive side, whole';
  if (/^ELEC\/CBL\./.test(place)) return 'cable';
  if (/^ELEC\/(SOL|MSW|SW)\b/.test(place)) return 'switch or solenoid contact';
  return null;
}

export const cableDrop = sheet(
  cableDropSheet,
  (given) => {
    const [drop, current, system] = [given.number('drop'), given.number('current'), given.number('system')];
    const named = legs.find((each) => each === given.word('leg'));
    const leg = named ?? legAt(given.at);
    const lines: ComputedLine<keyof typeof cableDropSheet.results>[] = [];
    const says: string[] = [];
    if (drop !== null) {
      lines.push({ of: 'drop', value: drop, limit: leg === null || system === null ? null : mostDrop(leg, system) });
      if (system === null) says.push('The system’s voltage is not known, so nothing is judged.');
      else if (leg === null) says.push('Which leg it is was not said, so it is not judged.');
      if (current !== null && current > 0) lines.push({ of: 'resistance', value: (drop / current) * 1000 });
    }
    const [positive, ground] = [given.list('positive'), given.list('ground')];
    const [battery, starter] = [given.number('battery'), given.number('starter')];
    const residual =
      positive !== null && ground !== null && battery !== null && starter !== null
        ? battery - starter - sum(positive) - sum(ground)
        : null;
    const most = system === null ? null : (mostResidualAt12V * system) / 12;
    const astray = residual !== null && most !== null && Math.abs(residual) > most * (1 + 1e-9);
    const sideVoid = astray
      ? {
          void: `${residual.toFixed(2)} V is not accounted for: a leg was missed or the readings belong to different crankings`,
        }
      : {};
    if (positive !== null) {
      const limit = system === null ? null : mostDrop('positive side, whole', system);
      lines.push({ of: 'positive side', value: sum(positive), limit, ...sideVoid });
    }
    if (ground !== null) {
      const limit = system === null ? null : mostDrop('ground side, whole', system);
      lines.push({ of: 'ground side', value: sum(ground), limit, ...sideVoid });
    }
    if (residual !== null) lines.push({ of: 'not accounted for', value: residual });
    if (positive !== null && ground !== null && current !== null) {
      lines.push({ of: 'lost as heat', value: (sum(positive) + sum(ground)) * current });
    }
    const gauge = given.word('gauge');
    const areaMm2 = given.number('area') ?? (gauge === null ? null : wireAreaMm2(gauge));
    const lengthM = given.number('length');
    if (areaMm2 !== null && lengthM !== null && current !== null) {
      const temperatureC = given.number('cableTemperature') ?? 20;
      const volts = (copperResistanceMohm(lengthM, areaMm2, temperatureC) / 1000) * current;
      lines.push({
        of: 'sound cable would lose',
        value: volts,
        crossCheck: {
          value: (handbookCopperResistanceMohm(lengthM, areaMm2, temperatureC) / 1000) * current,
          formula: '0.0172 × length ÷ cross-section, 0.39 % for each kelvin',
        },
        // Stranding, plating and the true length of a run: a table of stranded cable agrees within 3 %.
        uncertainty: { value: 0.03 * volts, from: '3 % between the formula and tables of stranded cable' },
      });
      if (drop !== null && drop > 1.5 * volts) {
        says.push(
          `A sound cable of this size would lose ${volts.toFixed(2)} V; the rest is lost at its joints or in broken strands.`,
        );
      }
    }
    return { lines, says };
  },
  (given) => {
    const problems: CheckProblem[] = [];
    const system = given.number('system');
    for (const id of ['drop', 'battery', 'starter'] as const) {
      const volts = given.number(id);
      if (volts === null || system === null) continue;
      const most = id === 'drop' ? system : 1.25 * system;
      if (volts > most) {
        problems.push({
          input: id,
          weight: 'impossible',
          what: `${volts} V cannot be read in a ${system} V system that cranks.`,
        });
      }
    }
    const [battery, starter] = [given.number('battery'), given.number('starter')];
    if (battery !== null && starter !== null && starter > battery) {
      problems.push({
        input: 'starter',
        weight: 'impossible',
        what: 'The starter cannot see more than the battery gives.',
      });
    }
    const gauge = given.word('gauge');
    if (gauge !== null && wireAreaMm2(gauge) === null) {
      problems.push({ input: 'gauge', weight: 'impossible', what: 'A gauge is a number from 1 to 40, or 1/0 to 4/0.' });
    }
    return problems;
  },
);
