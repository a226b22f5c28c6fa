import type { ClockRange, DepthRange } from '../../shared-lib/parts/location.ts';

/** `2.5` or `2-4` o'clock; null while it is neither. */
export function clockOf(typed: string): ClockRange | null {
  const [from, to] = typed
    .trim()
    .replaceAll(',', '.')
    .split(/\s*[-–]\s*/);
  const hours = [from, to ?? from].map(Number);
  const [fromHour = Number.NaN, toHour = Number.NaN] = hours;
  const isHour = (hour: number) => hour >= 0.5 && hour <= 12 && Number.isInteger(hour * 2);
  return typed.trim() !== '' && isHour(fromHour) && isHour(toHour) ? { fromHour, toHour } : null;
}

/** `340` or `90-160` mm; null while it is neither. */
export function depthOf(typed: string): DepthRange | null {
  const match = /^(\d+(?:\.\d+)?)(?:\s*[-–]\s*(\d+(?:\.\d+)?))?(?:\s*mm)?$/.exec(typed.trim().replaceAll(',', '.'));
  if (match === null) return null;
  const [fromMm, toMm] = [Number(match[1]), Number(match[2] ?? match[1])];
  return fromMm <= toMm ? { fromMm, toMm } : null;
}

/** A range as it is typed: one number where both ends are the same. */
export function rangeText(from: number, to: number): string {
  return from === to ? String(from) : `${from}-${to}`;
}
