import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type NavigationEvent,
  type NavigationState,
  navigate,
  still,
  wheelFactor,
} from '../../../../../renderer/stage/navigation/machine.ts';
import { screenPoint } from '../../../../../shared-lib/geometry/spaces.ts';
import { fitView, toImage, toScreen } from '../../../../../shared-lib/geometry/viewport.ts';

const room = { photo: { width: 4000, height: 3000 }, stage: { width: 800, height: 600 } };
const at = screenPoint;

function following(...events: NavigationEvent[]) {
  let step: { state: NavigationState; view: { scale: number; x: number; y: number } } = {
    state: still,
    view: { scale: 1, x: -1600, y: -1200 },
  };
  for (const event of events) step = navigate(step.state, event, step.view, room);
  return step;
}

describe('moving the photo', () => {
  test('it follows the hand, pixel by pixel, until the hand lets go', () => {
    const pulled = following(
      { type: 'grab', at: at(100, 100) },
      { type: 'drag', at: at(130, 90) },
      { type: 'drag', at: at(150, 80) },
    );
    expect(pulled).toEqual({ state: { name: 'panning', last: at(150, 80) }, view: { scale: 1, x: -1550, y: -1220 } });
    expect(navigate(pulled.state, { type: 'release' }, pulled.view, room).state).toEqual(still);
  });

  test('a move without a grab does nothing', () => {
    expect(following({ type: 'drag', at: at(5, 5) }).view).toEqual({ scale: 1, x: -1600, y: -1200 });
  });

  test('it cannot be pulled off the stage', () => {
    const { view } = following({ type: 'pan', dx: 1e6, dy: -1e6 });
    // Its corner stops at the middle of the stage.
    expect(toScreen(view, { x: -0.5, y: 2999.5 })).toEqual({ x: 400, y: 300 });
  });

  test('two fingers zoom about their middle, and what lay between them stays between them', () => {
    const start = { scale: 1, x: -1600, y: -1200 };
    const held = toImage(start, at(400, 300));
    const { view } = following(
      { type: 'two-fingers', a: at(350, 300), b: at(450, 300) },
      { type: 'pinch', a: at(320, 320), b: at(520, 320) },
    );
    expect(view.scale).toBeCloseTo(2, 9);
    expect(toScreen(view, held).x).toBeCloseTo(420, 6);
    expect(toScreen(view, held).y).toBeCloseTo(320, 6);
  });

  test('the wheel zooms about the pointer', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 800 }), fc.integer({ min: 0, max: 600 }), (x, y) => {
        const start = { scale: 1, x: -1600, y: -1200 };
        const held = toImage(start, at(x, y));
        const { view } = following({ type: 'zoom', at: at(x, y), factor: 1.5 });
        expect(toScreen(view, held).x).toBeCloseTo(x, 6);
        expect(toScreen(view, held).y).toBeCloseTo(y, 6);
      }),
    );
  });

  test('one key shows all, another every pixel', () => {
    expect(following({ type: 'fit' }).view).toEqual(fitView(room.photo, room.stage));
    expect(following({ type: 'fit' }, { type: 'scale', at: at(400, 300), to: 1 }).view.scale).toBeCloseTo(1, 9);
  });

  test('zooming out ends at the whole photo, in at sixteen screen pixels for one', () => {
    expect(following({ type: 'zoom', at: at(1, 1), factor: 1e-6 }).view.scale).toBeCloseTo(0.2, 9);
    expect(following({ type: 'zoom', at: at(1, 1), factor: 1e6 }).view.scale).toBe(16);
  });
});

describe('the wheel', () => {
  test('down zooms out and up by as much in', () => {
    expect(wheelFactor(100, 'pixel', false)).toBeLessThan(1);
    expect(wheelFactor(100, 'pixel', false) * wheelFactor(-100, 'pixel', false)).toBeCloseTo(1, 12);
  });

  test('a notch counts the same in lines as in pixels, and no jerk throws the photo away', () => {
    expect(wheelFactor(3, 'line', false)).toBeCloseTo(wheelFactor(99, 'pixel', false), 12);
    expect(wheelFactor(-1e6, 'pixel', false)).toBeLessThan(2);
    expect(wheelFactor(5, 'pixel', true)).toBeLessThan(wheelFactor(5, 'pixel', false));
  });
});
