import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { tools } from '../../../../../renderer/stage/tools/index.ts';
import { shapeNames, shapePointCounts } from '../../../../../shared-lib/model/mark.ts';
import { Hand } from '../hand.ts';

describe('the list of tools', () => {
  test('holds one for every shape, one to trace and one to pick with, each with a key of its own', () => {
    expect(tools.map(({ name }) => name).toSorted()).toEqual(['pick', 'trace', 'grow', ...shapeNames].toSorted());
    expect(new Set(tools.map(({ key }) => key)).size).toBe(tools.length);
    for (const { key, word, hint } of tools) {
      expect(key).toMatch(/^[A-Z]$/);
      expect(word.length * hint.length).toBeGreaterThan(0);
    }
  });
});

describe('point', () => {
  test('lands where the hand lets go', () => {
    new Hand('point')
      .pointerDown(40, 60)
      .expectState('placing')
      .move(44, 61)
      .up()
      .expectState('idle')
      .expectDrawn('point', [44, 61]);
  });

  test('Escape, or a second finger, drops it', () => {
    for (const key of ['cancel', 'abort'] as const) {
      new Hand('point').pointerDown(40, 60).key(key).up().expectState('idle').expectNothingDone();
    }
  });

  test('is kept on the photo', () => {
    new Hand('point').click(-50, 9000).expectDrawn('point', [-0.5, 599.5]);
  });
});

describe.each(['line', 'arrow', 'span'] as const)('%s', (shape) => {
  test('is pulled from end to end', () => {
    new Hand(shape)
      .pointerDown(40, 60)
      .expectState('pulling')
      .move(90, 60)
      .expectDraft([40, 60], [90, 60])
      .up()
      .expectState('idle')
      .expectDrawn(shape, [40, 60], [90, 60]);
  });

  test('is clicked at both ends', () => {
    new Hand(shape)
      .click(40, 60)
      .expectState('stretching')
      .move(70, 70)
      .expectDraft([40, 60], [70, 70])
      .click(90, 60)
      .expectState('idle')
      .expectDrawn(shape, [40, 60], [90, 60]);
  });

  test('a shaking press is a click, not a tiny shape', () => {
    new Hand(shape).pointerDown(40, 60).move(42, 61).up().expectState('stretching').expectNothingDone();
    new Hand(shape).with('touch').pointerDown(40, 60).move(47, 61).up().expectState('stretching').expectNothingDone();
  });

  test('a second click on the first end waits for a better one', () => {
    new Hand(shape).click(40, 60).click(41, 60).expectState('stretching').expectNothingDone();
  });

  test('Escape drops it, a second finger takes back the last press only', () => {
    new Hand(shape).click(40, 60).key('cancel').expectState('idle').expectNothingDone();
    new Hand(shape)
      .click(40, 60)
      .pointerDown(90, 90)
      .key('abort')
      .expectState('stretching')
      .click(90, 60)
      .expectDrawn(shape, [40, 60], [90, 60]);
  });

  test('needs no mouse', () => {
    new Hand(shape)
      .with('keyboard')
      .move(40, 60)
      .enter()
      .expectState('stretching')
      .move(41, 60)
      .move(90, 60)
      .enter()
      .expectDrawn(shape, [40, 60], [90, 60]);
  });
});

describe('path', () => {
  test('is clicked along and ended by a double click', () => {
    new Hand('path')
      .click(10, 10)
      .expectState('placing')
      .click(50, 20)
      .move(80, 15)
      .expectDraft([10, 10], [50, 20], [80, 15])
      .doubleClick(90, 10)
      .expectState('idle')
      .expectDrawn('path', [10, 10], [50, 20], [90, 10]);
  });

  test('is ended by Enter, without the point that still follows the hand', () => {
    new Hand('path').click(10, 10).click(50, 20).move(300, 300).key('finish').expectDrawn('path', [10, 10], [50, 20]);
  });

  test('one point is no path', () => {
    new Hand('path').click(10, 10).key('finish').expectState('placing').expectNothingDone();
    new Hand('path').doubleClick(10, 10).expectState('placing').expectNothingDone();
  });

  test('Backspace takes the last point back, and the first one ends it', () => {
    new Hand('path')
      .click(10, 10)
      .click(50, 20)
      .key('back')
      .move(50, 50)
      .expectDraft([10, 10], [50, 50])
      .key('back')
      .expectState('idle');
  });

  test('a point may be slid into place before letting go', () => {
    new Hand('path')
      .click(10, 10)
      .pointerDown(40, 40)
      .expectState('adding')
      .move(50, 20)
      .up()
      .key('finish')
      .expectDrawn('path', [10, 10], [50, 20]);
  });

  test('is drawn freehand in one pull, with fewer points than the hand made and the same ends', () => {
    const hand = new Hand('path').pointerDown(10, 100);
    for (let step = 1; step <= 200; step++) hand.move(10 + step, 100 + 20 * Math.sin(step / 25));
    hand.expectState('drawing').up().expectState('idle');
    const [change] = hand.done;
    const points = change?.type === 'add' ? change.points : [];
    expect(points.length).toBeGreaterThan(5);
    expect(points.length).toBeLessThan(60);
    expect(points[0]).toEqual({ x: 10, y: 100 });
    expect(points.at(-1)?.x).toBe(210);
  });

  test('needs no mouse: Enter twice on the last point ends it', () => {
    new Hand('path')
      .with('keyboard')
      .move(10, 10)
      .enter()
      .move(50, 20)
      .enter()
      .move(90, 10)
      .enter()
      .expectState('placing')
      .enter()
      .expectDrawn('path', [10, 10], [50, 20], [90, 10]);
  });
});

describe('area', () => {
  test('is clicked round and closed on its first point', () => {
    new Hand('area')
      .click(10, 10)
      .click(100, 10)
      .click(100, 90)
      .click(13, 12)
      .expectState('idle')
      .expectDrawn('area', [10, 10], [100, 10], [100, 90]);
  });

  test('two corners are no area', () => {
    new Hand('area').click(10, 10).click(100, 10).key('finish').expectState('placing').expectNothingDone();
  });

  test('is drawn round in one pull', () => {
    const hand = new Hand('area').pointerDown(200, 100);
    for (let step = 1; step <= 120; step++) {
      const turn = (step / 120) * 2 * Math.PI;
      hand.move(100 + 100 * Math.cos(turn), 100 + 100 * Math.sin(turn));
    }
    hand.up().expectState('idle');
    const [change] = hand.done;
    expect(change?.type === 'add' && change.points.length).toBeGreaterThan(12);
  });

  test('a pull that goes nowhere leaves nothing', () => {
    new Hand('area').pointerDown(10, 10).move(60, 10).up().expectState('idle').expectNothingDone();
  });

  test('Escape drops a freehand trail, a second finger too', () => {
    for (const key of ['cancel', 'abort'] as const) {
      new Hand('area')
        .pointerDown(10, 10)
        .move(60, 10)
        .move(60, 60)
        .key(key)
        .up()
        .expectState('idle')
        .expectNothingDone();
    }
  });
});

describe('whatever a hand does', () => {
  const place = fc.tuple(fc.integer({ min: -50, max: 850 }), fc.integer({ min: -50, max: 650 }));
  const act = fc.oneof(
    place.map((at) => ['down', at] as const),
    place.map((at) => ['move', at] as const),
    fc.constantFrom(['up'] as const, ['cancel'] as const, ['abort'] as const, ['finish'] as const, ['back'] as const),
  );

  test.each(shapeNames)('%s: only whole shapes on the photo are committed, and Escape always ends idle', (shape) => {
    fc.assert(
      fc.property(fc.array(act, { maxLength: 60 }), (acts) => {
        const hand = new Hand(shape);
        for (const [type, at] of acts) {
          if (type === 'down') hand.pointerDown(at[0], at[1]);
          else if (type === 'move') hand.move(at[0], at[1]);
          else if (type === 'up') hand.up();
          else hand.key(type);
        }
        hand.key('cancel').expectState('idle').expectDraft();
        const { fewest, most } = shapePointCounts[shape];
        for (const change of hand.done) {
          if (change.type !== 'add') throw new Error('a drawing tool only adds');
          expect(change.shape).toBe(shape);
          expect(change.points.length).toBeGreaterThanOrEqual(fewest);
          expect(change.points.length).toBeLessThanOrEqual(most);
          for (const { x, y } of change.points) {
            expect(x >= -0.5 && x <= 799.5 && y >= -0.5 && y <= 599.5).toBe(true);
          }
        }
      }),
    );
  });
});
