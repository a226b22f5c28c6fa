import type { ClockFrame } from './component.ts';
import { faceClock } from './face-clock.ts';
import type { ClockRange } from './location.ts';

const hourWords = [
  'twelve',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
] as const;

function speakHour(hour: number): string {
  const word = hourWords[Math.floor(hour) % 12] ?? String(hour);
  return Number.isInteger(hour) ? word : `half past ${word}`;
}

function speakRange(fromHour: number, toHour: number): string {
  if (fromHour === toHour) return Number.isInteger(fromHour) ? `${speakHour(fromHour)} o'clock` : speakHour(fromHour);
  return `from ${speakHour(fromHour)} to ${speakHour(toHour)} o'clock`;
}

/**
 * A clock position in words, always with where it is seen from.
 *
 * @param clock  in the deck frame; a range runs clockwise
 * @param frame  `fire`: a head's face is looked at from below, so both clocks are said and the mirrored range turns round;
 *   `deck`: seen from above; `up`: twelve is up in the machine
 * @example speakClock({ fromHour: 2, toHour: 2 }, 'fire') // "ten o'clock seen from below (two o'clock seen from above)"
 */
export function speakClock(clock: ClockRange, frame: ClockFrame): string {
  const deck = speakRange(clock.fromHour, clock.toHour);
  if (frame === 'up') return `${deck} (twelve is up)`;
  if (frame === 'deck') return `${deck} seen from above`;
  const face = speakRange(faceClock(clock.toHour), faceClock(clock.fromHour));
  return `${face} seen from below (${deck} seen from above)`;
}
