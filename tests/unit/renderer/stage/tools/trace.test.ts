import { describe, expect, test } from 'vitest';
import { withPending } from '../../../../../renderer/stage/pending.ts';
import { wayPoints } from '../../../../../shared-lib/measuring/traced-mark.ts';
import type { Mark } from '../../../../../shared-lib/model/mark.ts';
import { Hand, markOf } from '../hand.ts';

const points = (...at: [number, number][]) => at.map(([x, y]) => ({ x, y }));

describe('trace', () => {
  test('two taps set the ends', () => {
    new Hand('trace')
      .click(40, 60)
      .expectState('waiting')
      .move(200, 90)
      .click(240, 100)
      .expectState('idle')
      .expectDone({ type: 'trace', points: points([40, 60], [240, 100]) });
  });

  test('one rough pull hands its whole way over', () => {
    const { done } = new Hand('trace').pointerDown(40, 60).move(80, 90).move(140, 60).move(200, 90).up();
    expect(done).toEqual([
      {
        type: 'trace',
        points: points([40, 60], [200, 90]),
        scribble: points([40, 60], [80, 90], [140, 60], [200, 90]),
      },
    ]);
  });

  test('the keyboard sets both ends; Enter on one spot twice is no crack', () => {
    new Hand('trace').move(40, 60).enter().enter().expectState('waiting').expectNothingDone();
    new Hand('trace')
      .with('keyboard')
      .move(40, 60)
      .enter()
      .move(140, 60)
      .enter()
      .expectDone({ type: 'trace', points: points([40, 60], [140, 60]) });
  });

  test('Escape drops the start, a second finger keeps it', () => {
    new Hand('trace').click(40, 60).key('cancel').expectState('idle').expectNothingDone();
    new Hand('trace').click(40, 60).pointerDown(90, 90).key('abort').expectState('waiting').expectNothingDone();
  });
});

const traced = (...way: [number, number][]): Mark => ({
  ...markOf('crack', 'path', [100, 100], [150, 110], [200, 100], [250, 90], [300, 100]),
  origin: {
    by: 'traced',
    version: '1',
    parameters: { points: points(...way), pointPx: 1 },
    reading: { widthsPx: [1, 1, 1, 1, 1], unsure: [], doubts: [] },
  },
});

describe('a traced mark in hand', () => {
  const twoEnds = traced([100, 100], [300, 100]);
  const led = traced([100, 100], [200, 100], [300, 100]);
  const holding = (mark: Mark) => new Hand('pick', { marks: [mark], picked: 'crack' });

  test('pulled at an end, at a way point or between leads the trace, and never shifts its points', () => {
    holding(twoEnds)
      .pointerDown(300, 100)
      .move(320, 120)
      .up()
      .expectDone({ type: 'retrace', markId: 'crack', points: points([100, 100], [320, 120]) });
    holding(led)
      .pointerDown(200, 100)
      .move(210, 140)
      .up()
      .expectDone({ type: 'retrace', markId: 'crack', points: points([100, 100], [210, 140], [300, 100]) });
    holding(led)
      .pointerDown(250, 90)
      .move(260, 60)
      .up()
      .expectDone({ type: 'retrace', markId: 'crack', points: points([100, 100], [200, 100], [260, 60], [300, 100]) });
  });

  test('the draft runs through the hand', () => {
    holding(twoEnds).pointerDown(200, 100).move(200, 160).expectDraft([100, 100], [200, 160], [250, 90], [300, 100]);
  });

  test('loses a way point by the keyboard, but no end', () => {
    holding(led)
      .key('next-vertex')
      .key('next-vertex')
      .key('delete')
      .expectDone({ type: 'retrace', markId: 'crack', points: points([100, 100], [300, 100]) });
    holding(led).key('next-vertex').key('delete').expectDone({ type: 'remove', markId: 'crack' });
  });

  test('a second gesture before the tracer has answered builds on the first', () => {
    const way = points([100, 100], [200, 160], [300, 100]);
    const [pending] = withPending([twoEnds], {
      shape: 'path',
      points: way,
      handles: way,
      markId: 'crack',
      tagAt: null,
      focus: { x: 0, y: 0 },
    });
    expect(pending && wayPoints(pending.origin)).toEqual(way);
  });
});
