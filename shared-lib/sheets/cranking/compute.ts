import { type ComputedLine, sheet } from '../sheet-kind.ts';
import { leastCrankingVolts } from './limits.ts';
import { crankingSheet } from './sheet.ts';

/** Binary arithmetic must not decide: 0.8 × 12 V and 9.6 V are the same edge. */
const guard = 1e-9;

export const cranking = sheet(
  crankingSheet,
  (given) => {
    const [volts, current, speed] = [given.number('volts'), given.number('current'), given.number('speed')];
    const system = given.number('system');
    const [usualCurrent, neededSpeed] = [given.number('usualCurrent'), given.number('neededSpeed')];
    const limit = system === null ? null : leastCrankingVolts(system);
    const lines: ComputedLine<keyof typeof crankingSheet.results>[] = [];
    if (volts !== null) lines.push({ of: 'volts', value: volts, limit });
    if (speed !== null) {
      lines.push({
        of: 'speed',
        value: speed,
        limit: neededSpeed === null ? null : { min: neededSpeed, source: 'maker' },
      });
    }
    if (current !== null) lines.push({ of: 'current', value: current, limit: null });
    if (volts !== null && current !== null && current > 0) {
      lines.push({ of: 'resistance', value: (volts / current) * 1000 });
    }
    const says = [
      ...(system === null ? ['The system’s voltage is not known, so the battery voltage is not judged.'] : []),
      ...pointsTo(
        volts === null || limit?.min === undefined ? null : volts < limit.min * (1 - guard),
        current === null || usualCurrent === null ? null : current / usualCurrent,
        speed === null || neededSpeed === null ? null : speed < neededSpeed,
        speed === 0,
        current !== null && current < 5,
      ),
    ];
    return {
      lines,
      says,
      ...(given.word('fuel') === 'not cut' ? { void: 'the engine may have fired: the fuel was not cut' } : {}),
    };
  },
  (given) => {
    const [volts, dip, system] = [given.number('volts'), given.number('dip'), given.number('system')];
    return [
      ...(volts !== null && system !== null && volts > 1.2 * system * (1 + guard)
        ? [
            {
              input: 'volts',
              weight: 'impossible' as const,
              what: `A ${system} V battery cannot stand at ${volts} V while it cranks.`,
            },
          ]
        : []),
      ...(volts !== null && dip !== null && dip > volts
        ? [{ input: 'dip', weight: 'impossible' as const, what: 'The first dip cannot be above the steady voltage.' }]
        : []),
    ];
  },
);

/** Where voltage, current and speed together point. Source: the handbook's table; common practice, no source. */
function pointsTo(
  lowVolts: boolean | null,
  currentShare: number | null,
  slow: boolean | null,
  still: boolean,
  noCurrent: boolean,
): string[] {
  if (lowVolts === null) return [];
  const high = currentShare !== null && currentShare > 1.2;
  if (!lowVolts && noCurrent) return ['Voltage good, no current: open circuit, solenoid or interlock.'];
  if (lowVolts && high)
    return ['Voltage low, current high: dragging starter, tight engine or a cylinder full of fluid. Stop and look.'];
  if (lowVolts && (slow || still)) return ['Voltage and speed low without high current: weak or discharged battery.'];
  if (!lowVolts && high)
    return ['Voltage good, current high: low compression or a broken coupling; uneven beat is one weak cylinder.'];
  if (!lowVolts && slow === true)
    return ['Voltage good, engine slow: resistance in cables or contacts. Measure the drop of each leg.'];
  return [];
}
