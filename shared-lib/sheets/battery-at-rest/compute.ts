import { type ComputedLine, sheet } from '../sheet-kind.ts';
import { lookUp } from '../standards/lookup.ts';
import { chargeByGravity, chargeByVolts, handbookChargeByVolts } from './limits.ts';
import { batteryAtRestSheet } from './sheet.ts';

/** What a shop's voltmeter is off by. Source: the handbook's quantity dictionary; common practice, no source. */
const voltmeterV = 0.02;

/** Gravity at 80 °F: 0.004 for each 10 °F above. Source: US Army TM 5-3820-256-24-4. */
const gravityAt80F = (gravity: number, temperatureC: number): number => gravity + 0.00072 * (temperatureC - 80 / 3);

export const batteryAtRest = sheet(
  batteryAtRestSheet,
  (given) => {
    const cells = (given.number('batteryVolts') ?? 12) / 12;
    const rest = given.list('rest') ?? [];
    const gravity = given.list('gravity');
    const temperatureC = given.number('temperature');
    const hoursRested = given.number('hoursRested');
    const tooSoon = hoursRested !== null && hoursRested < 4 && given.word('surfaceCharge') !== 'yes';
    const lines: ComputedLine<keyof typeof batteryAtRestSheet.results>[] = rest.map((volts, index) => {
      const at12 = volts / cells;
      const charge = lookUp(chargeByVolts, at12);
      return {
        of: 'charge',
        ...(rest.length > 1 ? { which: String(index + 1) } : {}),
        value: charge,
        crossCheck: { value: lookUp(handbookChargeByVolts, at12), formula: 'the handbook’s rounded table' },
        uncertainty: {
          value: Math.ceil(steepness(at12) * (voltmeterV / cells) - 1e-9),
          from: '0.02 V on the table, rounded up to whole per cent; common practice, no source',
        },
        ...(tooSoon ? { void: 'less than 4 hours rested and the surface charge not taken off' } : {}),
      };
    });
    const says: string[] = [];
    if (gravity !== null) {
      const corrected = temperatureC === null ? gravity : gravity.map((each) => gravityAt80F(each, temperatureC));
      const lowest = Math.min(...corrected);
      if (temperatureC !== null) {
        lines.push({
          of: 'gravity at 80 °F',
          value: corrected,
          crossCheck: {
            value: gravity.map((each) => each + 0.0007 * (temperatureC - 25)),
            formula: 'gravity + 0.0007 for each kelvin over 25 °C',
          },
        });
      }
      lines.push(
        { of: 'charge by gravity', value: lookUp(chargeByGravity, lowest) },
        { of: 'spread between cells', value: Math.max(...gravity) - lowest0(gravity) },
      );
      says.push(`Lowest: cell ${gravity.indexOf(lowest0(gravity)) + 1}. One low cell points to a fault in it.`);
    }
    const charges = lines.flatMap((line) =>
      typeof line.value === 'number' && line.of === 'charge' ? [line.value] : [],
    );
    if (charges.some((charge) => charge < 75))
      says.push('Charge it before the load test; under 75 % that test says nothing.');
    return { lines, says };
  },
  (given) => {
    const state = given.word('state');
    return state === 'frozen' || state === 'cracked' || state === 'gassing'
      ? [{ input: 'state', weight: 'odd', what: `The battery is ${state}: do not load or charge it.` }]
      : [];
  },
);

const lowest0 = (values: readonly number[]): number => Math.min(...values);

/** Per cent for each volt where the table stands, or just inside its ends. */
function steepness(volts: number): number {
  const at = Math.min(Math.max(volts, 11.8901), 12.6499);
  return Math.max(
    (lookUp(chargeByVolts, at + 1e-6) - lookUp(chargeByVolts, at)) / 1e-6,
    (lookUp(chargeByVolts, at) - lookUp(chargeByVolts, at - 1e-6)) / 1e-6,
  );
}
