import { describe, test } from 'vitest';
import { Hand, markOf } from '../hand.ts';

const crack = markOf('crack', 'path', [100, 100], [200, 100], [300, 100]);
const stain = markOf('stain', 'area', [400, 300], [500, 300], [500, 400], [400, 400]);
const spot = markOf('spot', 'point', [600, 200]);
const marks = [crack, stain, spot];
const points = (...at: [number, number][]) => at.map(([x, y]) => ({ x, y }));

describe('picking', () => {
  test('a click on a mark picks it, one beside all marks picks none', () => {
    new Hand('pick', { marks })
      .click(150, 102)
      .expectPicked('crack')
      .click(600, 200)
      .expectPicked('spot')
      .click(50, 500)
      .expectPicked(null);
  });

  test('a click inside an area picks it', () => {
    new Hand('pick', { marks }).click(450, 350).expectPicked('stain');
  });

  test('a pull that starts on a mark not yet picked moves the photo, never the mark', () => {
    new Hand('pick', { marks })
      .pointerDown(150, 100)
      .move(180, 160)
      .up()
      .expectPicked('crack')
      .expectNothingDone()
      .expectEffect('pan');
  });

  test('a pull on the bare photo moves it; a double click shows all of it', () => {
    new Hand('pick', { marks }).pointerDown(50, 500).expectEffect('pan');
    new Hand('pick', { marks }).doubleClick(50, 500).expectEffect('fit');
  });

  test('a wide finger meets what a mouse would miss', () => {
    new Hand('pick', { marks }).click(150, 118).expectPicked(null);
    new Hand('pick', { marks }).with('touch').click(150, 118).expectPicked('crack');
  });

  test('the reach is the same on screen at any zoom', () => {
    const far = { marks, view: { scale: 0.1, x: 0, y: 0 } };
    new Hand('pick', far).click(600, 260).expectPicked('spot');
    new Hand('pick', { marks, view: { scale: 4, x: 0, y: 0 } }).click(600, 260).expectPicked(null);
  });
});

describe('reshaping the picked mark', () => {
  const hand = () => new Hand('pick', { marks, picked: 'crack' });

  test('a point is pulled and becomes one step', () => {
    hand()
      .pointerDown(201, 101)
      .expectState('pressing')
      .move(211, 131)
      .expectState('moving')
      .expectDraft([100, 100], [210, 130], [300, 100])
      .move(221, 141)
      .up()
      .expectState('idle')
      .expectDone({ type: 'change', markId: 'crack', points: points([100, 100], [220, 140], [300, 100]) });
  });

  test('Escape puts the point back, a second finger too', () => {
    for (const key of ['cancel', 'abort'] as const) {
      hand().pointerDown(200, 100).move(210, 130).key(key).expectDraft().up().expectState('idle').expectNothingDone();
    }
  });

  test('the middle of an edge makes a new point', () => {
    hand()
      .pointerDown(150, 100)
      .move(150, 130)
      .up()
      .expectDone({ type: 'change', markId: 'crack', points: points([100, 100], [150, 130], [200, 100], [300, 100]) });
  });

  test('the closing edge of an area has a middle too', () => {
    new Hand('pick', { marks, picked: 'stain' })
      .pointerDown(400, 350)
      .move(370, 350)
      .up()
      .expectDone({
        type: 'change',
        markId: 'stain',
        points: points([400, 300], [500, 300], [500, 400], [400, 400], [370, 350]),
      });
  });

  test('pulled by its line it moves as a whole and keeps its form at the edge of the photo', () => {
    hand()
      .pointerDown(125, 100)
      .move(135, 120)
      .up()
      .expectDone({ type: 'change', markId: 'crack', points: points([110, 120], [210, 120], [310, 120]) });
    hand()
      .pointerDown(125, 100)
      .move(-500, 100)
      .up()
      .expectDone({ type: 'change', markId: 'crack', points: points([-0.5, 100], [99.5, 100], [199.5, 100]) });
  });

  test('a clicked point is taken by Delete, then the whole mark', () => {
    hand()
      .click(200, 100)
      .key('delete')
      .expectDone({ type: 'change', markId: 'crack', points: points([100, 100], [300, 100]) });
    hand().key('delete').expectDone({ type: 'remove', markId: 'crack' }).expectPicked(null);
  });

  test('a double click takes a point, but never the last two of a path', () => {
    hand()
      .doubleClick(200, 100)
      .expectDone({ type: 'change', markId: 'crack', points: points([100, 100], [300, 100]) })
      .doubleClick(300, 100)
      .expectState('idle');
    new Hand('pick', { marks: [markOf('short', 'path', [0, 0], [50, 0])], picked: 'short' })
      .doubleClick(0, 0)
      .expectNothingDone();
  });

  test('a press that picks, and a quick pull after it, move the point and do not take it', () => {
    new Hand('pick', { marks })
      .click(200, 100)
      .expectPicked('crack')
      .pointerDown(200, 100, true)
      .move(200, 130)
      .up()
      .expectDone({ type: 'change', markId: 'crack', points: points([100, 100], [200, 130], [300, 100]) });
    new Hand('pick', { marks }).doubleClick(200, 100).expectPicked('crack').expectNothingDone();
  });

  test('a press without a pull changes nothing', () => {
    hand().click(200, 100).click(125, 100).expectNothingDone();
  });

  test('a tag is pulled by its plate and its mark stays', () => {
    const tagBoxes = [{ markId: 'crack', box: { left: 320, top: 120, right: 365, bottom: 150 } }];
    new Hand('pick', { marks, tagBoxes })
      .pointerDown(330, 130)
      .expectPicked('crack')
      .move(350, 160)
      .up()
      .expectDone({ type: 'change', markId: 'crack', tagAt: { x: 362.5, y: 165 } });
  });
});

describe('without a mouse', () => {
  test('Tab goes from mark to mark, and past the last one nothing is picked', () => {
    new Hand('pick', { marks })
      .key('next-mark')
      .expectPicked('crack')
      .expectEffect('look-at')
      .key('next-mark')
      .expectPicked('stain')
      .key('previous-mark')
      .expectPicked('crack')
      .key('next-mark')
      .key('next-mark')
      .expectPicked('spot')
      .key('next-mark')
      .expectPicked(null);
  });

  test('a point is taken up, carried by the arrow keys and put down', () => {
    new Hand('pick', { marks })
      .key('next-mark')
      .key('next-vertex')
      .key('next-vertex')
      .enter()
      .expectState('carrying')
      .move(201, 100)
      .move(201, 110)
      .expectDraft([100, 100], [201, 110], [300, 100])
      .enter()
      .expectState('idle')
      .expectDone({ type: 'change', markId: 'crack', points: points([100, 100], [201, 110], [300, 100]) });
  });

  test('Escape puts a carried point back; Escape again lets the mark go', () => {
    new Hand('pick', { marks, picked: 'crack' })
      .with('keyboard')
      .move(200, 100)
      .enter()
      .move(200, 160)
      .key('cancel')
      .expectState('idle')
      .expectNothingDone()
      .expectPicked('crack')
      .key('cancel')
      .expectPicked(null);
  });

  test('the square brackets choose a point and Delete takes it', () => {
    new Hand('pick', { marks, picked: 'crack' })
      .key('previous-vertex')
      .key('delete')
      .expectDone({ type: 'change', markId: 'crack', points: points([100, 100], [200, 100]) });
  });
});
