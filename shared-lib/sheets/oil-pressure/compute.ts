import { type ComputedLine, sheet } from '../sheet-kind.ts';
import { oilPressureSheet } from './sheet.ts';

export const oilPressure = sheet(oilPressureSheet, (given) => {
  const lines: ComputedLine<keyof typeof oilPressureSheet.results>[] = [];
  const says: string[] = [];
  const panel =
    given.word('gauge') === 'panel gauge' ? { void: 'it was read on the panel gauge; a test gauge decides' } : {};
  const [pressure, idle, riseTime] = [given.number('pressure'), given.number('idle'), given.number('riseTime')];
  if (pressure !== null) lines.push({ of: 'pressure', value: pressure, ...panel });
  if (idle !== null) lines.push({ of: 'idle', value: idle, ...panel });
  if (riseTime !== null) lines.push({ of: 'time to rise', value: riseTime });
  const [rise, hours] = [given.number('rise'), given.number('over')];
  if (rise !== null && hours !== null) {
    const perHour = (rise - (given.number('added') ?? 0)) / hours;
    lines.push({ of: 'rise', value: perHour });
    if (perHour > 0) says.push('Rising oil is fuel or coolant: find out which before it runs.');
    if (perHour < 0) says.push('Falling oil is burnt or lost.');
  }
  return { lines, says };
});
