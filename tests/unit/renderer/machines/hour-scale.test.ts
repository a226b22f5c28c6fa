import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { besideMark, hourScale, labelRooms, shareAlong } from '../../../../renderer/machines/hour-scale.ts';

const visitHours = fc.array(fc.integer({ min: 0, max: 200_000 }), { minLength: 1, maxLength: 12 });

describe('the rule of hours', () => {
  it('holds every visit with room at both ends, between round numbers', () => {
    fc.assert(
      fc.property(visitHours, (hours) => {
        const scale = hourScale(hours);
        for (const each of hours) {
          expect(shareAlong(scale, each)).toBeGreaterThanOrEqual(0);
          expect(shareAlong(scale, each)).toBeLessThanOrEqual(0.95);
        }
        expect(scale.from).toBeGreaterThanOrEqual(0);
        expect(scale.majors.length).toBeGreaterThanOrEqual(2);
        expect(scale.majors.length).toBeLessThanOrEqual(7);
        for (const major of scale.majors) expect(Math.abs(major % scale.majorStep)).toBeCloseTo(0, 6);
        expect(String(scale.majorStep)).toMatch(/^[125]0*$/);
      }),
    );
  });

  it('shows the worked case of a machine that returned after 210 h', () => {
    const scale = hourScale([6050, 6260]);
    expect(scale.majors).toEqual([6000, 6100, 6200, 6300]);
    expect(scale.minorStep).toBe(10);
  });
});

describe('the words over the marks', () => {
  const wish = (id: string, x: number, wantedPx = 240) => ({ id, x, wantedPx });

  it('stand forwards where there is room, and never over each other', () => {
    const marks = fc.array(fc.integer({ min: 5, max: 795 }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(marks, fc.integer({ min: 60, max: 500 }), (xs, wantedPx) => {
        const sorted = [...xs].sort((a, b) => a - b).map((x, at) => wish(String(at), x, wantedPx));
        const rooms = labelRooms(sorted, 800, 150);
        expect(rooms.at(-1)?.id).toBe(sorted.at(-1)?.id);
        for (const [at, room] of rooms.entries()) {
          expect(room.left).toBeGreaterThanOrEqual(-1e-9);
          expect(room.left + room.width).toBeLessThanOrEqual(800 + 1e-9);
          const next = rooms[at + 1];
          if (next !== undefined) expect(room.left + room.width).toBeLessThanOrEqual(next.left);
        }
      }),
    );
  });

  it('the newest visit turns back from the end of the rule', () => {
    const [first, newest] = labelRooms([wish('a', 150), wish('b', 700)], 850, 150);
    expect(newest).toMatchObject({ id: 'b', alignEnd: true, left: 460, width: 240 });
    expect(first).toMatchObject({ id: 'a', left: 150, width: 240 });
  });
});

describe('a number under a visit', () => {
  it('moves beside the line that would go through it', () => {
    expect(besideMark(100, 20, [300])).toBe(100);
    expect(besideMark(100, 20, [98])).toBe(125);
    expect(besideMark(100, 20, [110])).toBe(83);
  });
});
