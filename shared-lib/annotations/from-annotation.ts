import { AppError } from '../contract/errors.ts';
import type { XY } from '../geometry/spaces.ts';
import { Mark, shapePointCounts } from '../model/mark.ts';
import { checkAnnotation } from './check-annotation.ts';
import { digestOf } from './content-name.ts';
import { type SvgShape, shapeOf } from './svg-shape.ts';

export interface ReadAnnotation {
  /** SHA-256 of the photo it is about; null where its source is named another way. */
  readonly digest: string | null;
  readonly source: string;
  readonly mark: Omit<Mark, 'shotId' | 'findingId' | 'calibrationId'> &
    Pick<Partial<Mark>, 'shotId' | 'findingId' | 'calibrationId'>;
}

type Json = Readonly<Record<string, unknown>>;
const isObject = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const listOf = (value: unknown): readonly unknown[] =>
  value === undefined ? [] : Array.isArray(value) ? value : [value];

const OwnPart = Mark.omit({ id: true, points: true, note: true });

const malformed = (clause: string, reason: string): AppError =>
  new AppError('annotation-malformed', { clause, reason });

/**
 * Reads a Web Annotation back into a mark: our own unchanged, another's as far as it is one plain shape on a photo. The
 * selector always decides the place.
 *
 * @throws AppError 'annotation-malformed' where a rule of the Recommendation is broken, or the shape is not a plain one
 */
export function fromAnnotation(value: unknown): ReadAnnotation {
  const [broken] = checkAnnotation(value);
  if (broken) throw malformed(broken.clause, broken.reason);
  const annotation = value as Json;
  const [target] = listOf(annotation.target).filter((one) => isObject(one) && 'selector' in one);
  if (!isObject(target)) throw malformed('4.2', 'no part of a photo is chosen');
  const selected = listOf(target.selector)
    .map(selectedShape)
    .find((shape) => shape !== null);
  if (!selected) throw malformed('4.2.7', 'the chosen part is not one plain shape');
  const source = String(isObject(target.source) ? target.source.id : target.source);
  const own = OwnPart.safeParse(annotation.mark);
  const id = String(annotation.id);
  const shape = own.success && canBe(own.data.shape, selected) ? own.data.shape : selected.shape;
  const note = noteOf(annotation);
  if (note.length > 1000 || selected.points.length > shapePointCounts[shape].most)
    throw malformed('3.2.4', 'it is too long');
  const place = {
    id: id.replace(/^urn:uuid:/, ''),
    shape,
    points: selected.points.map((point) => ({ ...point })),
    note,
  };
  return {
    digest: digestOf(source),
    source,
    mark: own.success
      ? { ...own.data, ...place }
      : { ...place, role: 'note', origin: { by: 'imported', from: id.slice(0, 200) }, tagAt: null },
  };
}

/** A line, an arrow and a span look the same in SVG. */
function canBe(shape: Mark['shape'], selected: SvgShape): boolean {
  const isSegment = (name: Mark['shape']): boolean => name === 'line' || name === 'arrow' || name === 'span';
  if (shape === 'path') return selected.shape === 'path' || selected.shape === 'line';
  return shape === selected.shape || (isSegment(shape) && isSegment(selected.shape));
}

function noteOf(annotation: Json): string {
  if (typeof annotation.bodyValue === 'string') return annotation.bodyValue;
  return listOf(annotation.body)
    .flatMap((body) =>
      isObject(body) && typeof body.value === 'string' && body.purpose !== 'describing' ? [body.value] : [],
    )
    .join('\n');
}

function selectedShape(selector: unknown): SvgShape | null {
  if (!isObject(selector) || typeof selector.value !== 'string') return null;
  if (selector.type === 'SvgSelector') return shapeOf(selector.value);
  if (selector.type === 'FragmentSelector') return pixelRectangle(selector.value);
  return null;
}

/** `xywh=pixel:x,y,w,h` or without the unit; whole numbers only. Source: W3C Media Fragments URI 1.0, 4.2.2. */
function pixelRectangle(value: string): SvgShape | null {
  const match = /^xywh=(?:pixel:)?(\d+),(\d+),(\d+),(\d+)$/.exec(value);
  if (!match) return null;
  const [x = 0, y = 0, w = 0, h = 0] = match.slice(1).map(Number);
  if (w === 0 || h === 0) return null;
  // Counted from the photo's edge, half a pixel before the first pixel's centre.
  const corner = (dx: number, dy: number): XY => ({ x: x + dx - 0.5, y: y + dy - 0.5 });
  return { shape: 'area', points: [corner(0, 0), corner(w, 0), corner(w, h), corner(0, h)] };
}
