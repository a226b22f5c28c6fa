import type { Shot } from '../../shared-lib/model/shot.ts';
import { isoDayAt, timeOfDayAt } from '../../shared-lib/model/wall-clock.ts';
import { dayWords } from '../ui/words.ts';

/** `11 May 10:42`, and who says so where it is not the camera. */
export function momentWords({ taken, takenLocal }: Pick<Shot, 'taken' | 'takenLocal'>): string {
  if (taken === null) return takenLocal === null ? 'time not known' : `${takenLocal} by a camera that names no zone`;
  const { atMs, zoneOffsetMin } = taken;
  const words = `${dayWords(isoDayAt(atMs, zoneOffsetMin))} ${timeOfDayAt(atMs, zoneOffsetMin)}`;
  if (taken.source === 'camera-corrected') return `${words}, camera clock corrected`;
  return taken.source === 'typed' ? `${words}, typed` : words;
}
