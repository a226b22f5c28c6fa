export type EngineSide = 'free end' | 'right' | 'drive end' | 'left';
export type MachineSide = 'front' | 'right' | 'rear' | 'left';

const engineSides: readonly EngineSide[] = ['free end', 'right', 'drive end', 'left'];
const machineSides: readonly MachineSide[] = ['front', 'right', 'rear', 'left'];

/**
 * Which side of the machine a side of its engine is.
 *
 * @param side  of the engine; left and right looking from the drive end towards the free end
 * @param heading  degrees from the direction of travel to the free end, clockwise seen from above: 0 fan to the front,
 *   90 fan to the right, 180 fan to the rear (the usual lift truck), 270 fan to the left
 * @returns  the side of the machine, from the seat facing the direction of travel
 * Source: the handbook's 2.2 asks for the four headings; the clockwise sense is a convention of our own.
 * @example machineSideOf('left', 180) // 'right'
 */
export function machineSideOf(side: EngineSide, heading: 0 | 90 | 180 | 270): MachineSide {
  const turned = (engineSides.indexOf(side) + heading / 90) % 4;
  return machineSides[turned] ?? 'front';
}
