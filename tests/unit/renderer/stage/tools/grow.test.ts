import { describe, expect, test } from 'vitest';
import { Hand } from '../hand.ts';

const points = (...at: [number, number][]) => at.map(([x, y]) => ({ x, y }));

describe('grow', () => {
  test('one tap inside a patch asks for its outline; a hand that shakes taps still', () => {
    new Hand('grow')
      .click(40, 60)
      .expectState('idle')
      .expectDone({ type: 'grow', points: points([40, 60]) });
    new Hand('grow')
      .pointerDown(40, 60)
      .move(41, 61)
      .up()
      .expectDone({ type: 'grow', points: points([40, 60]) });
  });

  test('one rough pull over it hands its whole way over', () => {
    const { done } = new Hand('grow').pointerDown(40, 60).move(80, 90).move(140, 60).move(200, 90).up();
    expect(done).toEqual([{ type: 'grow', points: points([40, 60], [80, 90], [140, 60], [200, 90]) }]);
  });

  test('the keyboard taps too', () => {
    new Hand('grow')
      .with('keyboard')
      .move(40, 60)
      .enter()
      .expectDone({ type: 'grow', points: points([40, 60]) });
  });

  test('Escape and a second finger drop the line', () => {
    new Hand('grow').pointerDown(40, 60).move(90, 60).key('cancel').expectState('idle').expectNothingDone();
    new Hand('grow').pointerDown(40, 60).move(90, 60).key('abort').expectState('idle').expectNothingDone();
  });
});
