import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkAnnotation } from '../../../../shared-lib/annotations/check-annotation.ts';
import { contentName, digestOf } from '../../../../shared-lib/annotations/content-name.ts';
import { fromAnnotation } from '../../../../shared-lib/annotations/from-annotation.ts';
import { shapeOf } from '../../../../shared-lib/annotations/svg-shape.ts';
import { toAnnotation } from '../../../../shared-lib/annotations/to-annotation.ts';
import { type Mark, shapeNames, shapePointCounts } from '../../../../shared-lib/model/mark.ts';

const photo = { digest: 'f4ca408ec0bbd32c4c0bb2ae6cbd2b5e4a7a5c46b3d7a7a3e3aa0b4b2f9d0c11', width: 4032, height: 3024 };

const coordinate = fc.double({ min: -0.5, max: 4000, noNaN: true }).map((value) => value + 0);
const point = fc.record({ x: coordinate, y: coordinate });
const mark: fc.Arbitrary<Mark> = fc.constantFrom(...shapeNames).chain((shape) =>
  fc.record({
    id: fc.uuid(),
    shotId: fc.uuid(),
    findingId: fc.option(fc.uuid()),
    shape: fc.constant(shape),
    points: fc.array(point, {
      minLength: shapePointCounts[shape].fewest,
      maxLength: Math.min(40, shapePointCounts[shape].most),
    }),
    role: fc.constantFrom('finding', 'calibration', 'matching', 'note'),
    origin: fc.constantFrom(
      { by: 'hand' } as const,
      { by: 'traced', version: '1', parameters: { rodPx: 210 } } as const,
      { by: 'carried', fromMarkId: 'other' } as const,
    ),
    calibrationId: fc.option(fc.uuid()),
    tagAt: fc.option(point),
    note: fc.string({ maxLength: 80, unit: 'grapheme' }),
  }),
);

test('every mark goes out as JSON-LD and comes back unchanged, following the Recommendation', () => {
  fc.assert(
    fc.property(mark, fc.constantFrom('', 'Crack between the valves'), (one, said) => {
      const text = JSON.stringify(toAnnotation(one, photo, said));
      const there: unknown = JSON.parse(text);
      expect(checkAnnotation(there)).toEqual([]);
      const back = fromAnnotation(there);
      // A negative zero is written as zero.
      expect(JSON.stringify(back.mark.points)).toBe(JSON.stringify(one.points));
      expect({ ...back.mark, points: one.points, tagAt: null }).toEqual({ ...one, tagAt: null });
      expect(JSON.stringify(back.mark.tagAt)).toBe(JSON.stringify(one.tagAt));
      expect(back.digest).toBe(photo.digest);
    }),
    { seed: 5, numRuns: 300 },
  );
});

/** Source: RFC 6920, section 8.1: the SHA-256 of "Hello World!" and its name. */
test('a photo is named by the digest of its bytes', () => {
  const hex = '7f83b1657ff1fc53b92dc18148a1d65dfc2d4b1fa3d677284addd200126d9069';
  expect(contentName(hex)).toBe('ni:///sha-256;f4OxZX_x_FO5LcGBSKHWXfwtSx-j1ncoSt3SABJtkGk');
  expect(digestOf(contentName(hex))).toBe(hex);
});

const good = {
  '@context': 'http://www.w3.org/ns/anno.jsonld',
  id: 'http://example.org/anno1',
  type: 'Annotation',
  target: {
    source: 'http://example.org/photo.jpg',
    selector: { type: 'SvgSelector', value: '<svg><polygon points="10,10 50,10 50,40"/></svg>' },
  },
};

/** Clauses of the W3C Recommendation of 23 February 2017; each row breaks one MUST of its conformance tests. */
describe('what breaks the Recommendation is refused with its clause', () => {
  const { id: _id, ...noId } = good;
  const { target: _target, ...noTarget } = good;
  const rows: readonly [string, unknown, string][] = [
    ['another context', { ...good, '@context': 'http://example.org/other' }, '3.1'],
    ['a single context in a list', { ...good, '@context': ['http://www.w3.org/ns/anno.jsonld'] }, '3.1'],
    ['no id', noId, '3.1'],
    ['an id that is no IRI', { ...good, id: 'first' }, '3.1'],
    ['another type', { ...good, type: 'Note' }, '3.1'],
    ['no target', noTarget, '3.1'],
    ['body and bodyValue', { ...good, body: 'http://example.org/b', bodyValue: 'b' }, '3.2.5'],
    ['a textual body without text', { ...good, body: { type: 'TextualBody' } }, '3.2.4'],
    ['a target without source', { ...good, target: { selector: good.target.selector } }, '4'],
    ['a selector of no type', { ...good, target: { ...good.target, selector: { value: 'x' } } }, '4.2'],
    [
      'a fragment without value',
      { ...good, target: { ...good.target, selector: { type: 'FragmentSelector' } } },
      '4.2.1',
    ],
    ['an empty SVG selector', { ...good, target: { ...good.target, selector: { type: 'SvgSelector' } } }, '4.2.7'],
    ['a moment without its zone', { ...good, created: '2026-01-28T12:00:00' }, '3.3.1'],
  ];
  test.each(rows)('%s', (_, value, clause) => {
    expect(checkAnnotation(value).map((rule) => rule.clause)).toContain(clause);
    expect(() => fromAnnotation(value)).toThrow(/annotation-malformed/);
  });
  test('and what keeps it is read', () => {
    expect(checkAnnotation(good)).toEqual([]);
    // Counted from the edge: the first pixel's centre is half a pixel in.
    expect(fromAnnotation(good).mark).toMatchObject({
      shape: 'area',
      role: 'note',
      points: [
        { x: 9.5, y: 9.5 },
        { x: 49.5, y: 9.5 },
        { x: 49.5, y: 39.5 },
      ],
    });
  });
});

/** Source: W3C Media Fragments URI 1.0, 4.2.2: whole pixels from the edge; fractions are not in the grammar. */
test('a rectangle in media-fragment form is read, a fraction is not', () => {
  const fragment = (value: string) => ({
    ...good,
    target: {
      ...good.target,
      selector: { type: 'FragmentSelector', conformsTo: 'http://www.w3.org/TR/media-frags/', value },
    },
  });
  expect(fromAnnotation(fragment('xywh=pixel:160,120,320,240')).mark.points[2]).toEqual({ x: 479.5, y: 359.5 });
  expect(() => fromAnnotation(fragment('xywh=pixel:160.5,120,320,240'))).toThrow(/annotation-malformed/);
});

test.each([
  '<svg><script>alert(1)</script></svg>',
  '<svg><polygon points="1,1 2,2 3,3" onload="alert(1)"/></svg>',
  '<svg><image href="http://example.org/x.png"/></svg>',
  '<svg><polygon points="1,1 2,2 3,3"/><polygon points="1,1 2,2 3,3"/></svg>',
  '<svg><path d="M 1 1 C 2 2 3 3 4 4"/></svg>',
  '<svg><polygon points="1,1 2,2 a,b"/></svg>',
  '<svg><g transform="scale(2)"><polygon points="1,1 2,2 3,3"/></g></svg>',
  '<svg><circle cx="NaN" cy="1"/></svg>',
  '<!DOCTYPE svg [<!ENTITY a "b">]><svg><circle cx="1" cy="1"/></svg>',
])('an SVG that is not one plain shape is not read: %s', (svg) => expect(shapeOf(svg)).toBeNull());
