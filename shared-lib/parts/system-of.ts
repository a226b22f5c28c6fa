import { parseLocation } from './parse-location.ts';

/**
 * The code of the system a place belongs to.
 *
 * @throws AppError 'location-malformed'
 * @example systemOf('HYD/HOSE.boom.L@end=A') // 'HYD'
 */
export function systemOf(locationText: string): string {
  return parseLocation(locationText).path[0]?.code ?? '';
}
