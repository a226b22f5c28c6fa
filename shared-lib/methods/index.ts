import type { MethodCode } from '../model/finding.ts';
import type { Method } from './method.ts';

/**
 * How a mechanic looks. What each sees and misses: the handbook's chapter 4, in our own words; visual, penetrant, magnetic
 * particle and ultrasonic practice follow FAA AC 43.13-1B chapter 5 and ISO 3452 / 9934 (cited from memory); the rest is
 * common practice, no source.
 */
export const methods: readonly Method[] = [
  {
    code: 'V',
    name: 'By eye',
    by: 'by eye',
    sees: 'gross damage, wet paths, colour, missing parts',
    cannotSee: 'tight cracks, and anything behind, under paint, dirt or oil',
    record: 'cleaned or not, light, dry or wet, how much of the surface was seen',
  },
  {
    code: 'MG',
    name: 'Magnifier or borescope',
    by: 'by magnifier',
    sees: 'fine cracks, cross-hatch, pits, seats in place',
    cannotSee: 'depth; through a borescope distances are not to scale and bends hide blind spots',
    record: 'power, cleaned or not, what could be reached',
  },
  {
    code: 'PT',
    name: 'Penetrant',
    by: 'by penetrant',
    sees: 'cracks open to a clean surface, in any metal that is not porous',
    cannotSee: 'cracks that are filled or smeared over, cracks below the surface; rough castings bleed everywhere',
    record: 'cleaning, minutes of dwell, temperature, developer, light',
  },
  {
    code: 'MT',
    name: 'Magnetic particle',
    by: 'by magnetic particle',
    sees: 'cracks at or near the surface of iron and steel',
    cannotSee:
      'aluminium and other metals a magnet does not hold; cracks along the field, so two directions are needed',
    record: 'both directions, field, wet or dry, demagnetised afterwards',
  },
  {
    code: 'UT',
    name: 'Ultrasonic thickness',
    by: 'by ultrasonic thickness gauge',
    sees: 'the wall that is left, in decks, liners, booms',
    cannotSee: 'cracks; rough scale and pits scatter the reading',
    record: 'couplant, calibration on the same material',
  },
  {
    code: 'PR',
    name: 'Pressure test',
    by: 'by pressure test',
    sees: 'leaks from the tested side, at the pressure and temperature of the test',
    cannotSee:
      'cracks that close cold or unbolted, cracks not joined to the tested side, leaks above the test pressure',
    record: 'pressure, water temperature, minutes, plugs used',
  },
  {
    code: 'VAC',
    name: 'Vacuum test',
    by: 'by vacuum test',
    sees: 'leakage of seats and ports',
    cannotSee: 'guide leakage mixes in, and nothing shows of how it is hot',
    record: 'vacuum, seconds held, wet or dry',
  },
  {
    code: 'M',
    name: 'Measured',
    by: 'by measuring',
    sees: 'size and shape',
    cannotSee: 'what lies between the measured points; temperature, dirt and the hand press on the figure',
    record: 'instrument, its zero and resolution, temperature of the part',
  },
  {
    code: 'F',
    name: 'Pressure, flow or function test',
    by: 'by function test',
    sees: 'how it performs today, in these conditions',
    cannotSee: 'the margin tomorrow, and faults that show only now and then, only hot or only under load',
    record: 'hot or cold, load, speed, how long',
  },
  {
    code: 'E',
    name: 'Electrical test',
    by: 'by electrical test',
    sees: 'resistance in a live path under that current',
    cannotSee: 'faults that come and go, and broken strands under insulation until the load is heavy',
    record: 'current, points measured, battery state',
  },
  {
    code: 'LAB',
    name: 'Fluid sample',
    by: 'by sample',
    sees: 'dirt, fluids mixed together, and with more than one sample a trend',
    cannotSee: 'a trend in one sample; oil just changed hides everything',
    record: 'hours on the fluid, where and how it was drawn',
  },
];

const byCode: ReadonlyMap<string, Method> = new Map(methods.map((method) => [method.code, method]));

export function methodOf(code: MethodCode): Method {
  const found = byCode.get(code);
  if (found === undefined) throw new RangeError(`no method ${code}`);
  return found;
}
