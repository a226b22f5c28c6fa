import { type ComputedLine, sheet } from '../sheet-kind.ts';
import { steeringPlaySheet } from './sheet.ts';

const degrees = (radians: number): number => (radians * 180) / Math.PI;

export const steeringPlay = sheet(
  steeringPlaySheet,
  (given) => {
    const [radius, arc, chord] = [given.number('radius'), given.number('arc'), given.number('chord')];
    const byArc = radius === null || arc === null ? null : degrees(arc / radius);
    const byChord = radius === null || chord === null ? null : degrees(2 * Math.asin(chord / (2 * radius)));
    const lines: ComputedLine<keyof typeof steeringPlaySheet.results>[] = [];
    const value = byArc ?? byChord;
    if (value !== null) {
      lines.push({
        of: 'play',
        value,
        ...(byArc !== null && byChord !== null
          ? { crossCheck: { value: byChord, formula: 'by the straight distance' } }
          : {}),
        ...(given.word('steering') === 'powered' && given.word('engine') === 'off'
          ? { void: 'powered steering is measured with the engine running' }
          : {}),
      });
    }
    const creep = given.number('creep');
    if (creep !== null) lines.push({ of: 'creep at lock', value: creep });
    return { lines };
  },
  (given) => {
    const [radius, arc, chord] = [given.number('radius'), given.number('arc'), given.number('chord')];
    return [
      ...(radius !== null && chord !== null && chord > 2 * radius
        ? [
            {
              input: 'chord',
              weight: 'impossible' as const,
              what: 'No two points of a rim are further apart than its diameter.',
            },
          ]
        : []),
      ...(radius !== null && arc !== null && arc > 2 * Math.PI * radius
        ? [{ input: 'arc', weight: 'odd' as const, what: 'That is more than a whole turn of the wheel; is it right?' }]
        : []),
    ];
  },
);
