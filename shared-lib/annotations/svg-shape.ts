import type { Size, XY } from '../geometry/spaces.ts';
import type { ShapeName } from '../model/mark.ts';

/** Numbers as short as they can be and still come back the same. */
const pair = ({ x, y }: XY): string => `${x},${y}`;

/**
 * A mark's shape as SVG over the upright original. The view box begins half a pixel before the first pixel's centre, so that
 * the numbers are ImagePoints as they stand (pixel centres at whole numbers) and survive the way out and back unchanged.
 */
export function svgOf(shape: ShapeName, points: readonly XY[], photo: Size): string {
  const [a = { x: 0, y: 0 }, b = a] = points;
  const list = points.map(pair).join(' ');
  const line = `<line x1="${a.x}" y1="${a.y}" x2="${b.x}" y2="${b.y}"/>`;
  const element: Record<ShapeName, string> = {
    point: `<circle cx="${a.x}" cy="${a.y}" r="1"/>`,
    line,
    arrow: line,
    span: line,
    path: `<polyline fill="none" points="${list}"/>`,
    area: `<polygon points="${list}"/>`,
  };
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="-0.5 -0.5 ${photo.width} ${photo.height}">${element[shape]}</svg>`;
}

export interface SvgShape {
  readonly shape: ShapeName;
  readonly points: readonly XY[];
}

const numberText = '[+-]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d+)?';
const wholeSvg = /^\s*(?:<\?xml[^>]*\?>\s*)?<svg\b([^>]*)>([\s\S]*)<\/svg>\s*$/;
const oneElement =
  /^\s*(?:<g>)?\s*<(circle|line|polyline|polygon|rect|path)\b([^>]*?)(?:\/>|>\s*<\/\1>)\s*(?:<\/g>)?\s*$/;

/**
 * Reads one plain shape out of an SVG selector. Only numbers are taken out of it, never markup: what holds anything else
 * (scripts, styles, links, several shapes, curves, transformations) is not read at all.
 *
 * @returns null for an SVG that is not one plain shape
 */
export function shapeOf(svg: string): SvgShape | null {
  const whole = wholeSvg.exec(svg);
  const element = whole && oneElement.exec(whole[2] ?? '');
  if (!whole || !element) return null;
  const attributes = attributesOf(element[2] ?? '');
  if (attributes.has('transform') || [...attributes.keys()].some((name) => name.startsWith('on'))) return null;
  const shift = shiftOf(attributesOf(whole[1] ?? ''));
  if (!shift) return null;
  const found = plainShape(element[1] ?? '', attributes);
  if (!found?.points.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))) return null;
  return { shape: found.shape, points: found.points.map(({ x, y }) => ({ x: x + shift.x, y: y + shift.y })) };
}

function attributesOf(text: string): Map<string, string> {
  return new Map(
    [...text.matchAll(/([\w:-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g)].map((m) => [m[1] ?? '', m[2] ?? m[3] ?? '']),
  );
}

/** Others' SVG counts from the photo's edge, ours from the first pixel's centre; the view box says which. */
function shiftOf(root: ReadonlyMap<string, string>): XY | null {
  const box = root
    .get('viewBox')
    ?.trim()
    .split(/[\s,]+/)
    .map(Number);
  if (box && (box.length !== 4 || !box.every(Number.isFinite))) return null;
  const [left = 0, top = 0] = box ?? [];
  // From the edge to the centre of the first pixel, and from where the box begins. 0 for our own, to the last digit.
  return { x: -0.5 - left, y: -0.5 - top };
}

function plainShape(name: string, attributes: ReadonlyMap<string, string>): SvgShape | null {
  const value = (key: string): number => (attributes.has(key) ? Number(attributes.get(key)) : 0);
  switch (name) {
    case 'circle':
      return { shape: 'point', points: [{ x: value('cx'), y: value('cy') }] };
    case 'line':
      return {
        shape: 'line',
        points: [
          { x: value('x1'), y: value('y1') },
          { x: value('x2'), y: value('y2') },
        ],
      };
    case 'polyline':
    case 'polygon':
      return chain(attributes.get('points') ?? '', name === 'polygon');
    case 'rect': {
      const [x, y, w, h] = [value('x'), value('y'), value('width'), value('height')];
      if (!(w > 0 && h > 0)) return null;
      return {
        shape: 'area',
        points: [
          { x, y },
          { x: x + w, y },
          { x: x + w, y: y + h },
          { x, y: y + h },
        ],
      };
    }
    case 'path':
      return straightPath(attributes.get('d') ?? '');
    default:
      return null;
  }
}

function chain(text: string, isClosed: boolean): SvgShape | null {
  const numbers = text.match(new RegExp(numberText, 'g'))?.map(Number) ?? [];
  // Anything but numbers and what parts them is no list of points.
  if (text.replace(new RegExp(numberText, 'g'), '').replace(/[\s,]/g, '') !== '' || numbers.length % 2 !== 0)
    return null;
  const points = Array.from({ length: numbers.length / 2 }, (_, i) => ({
    x: numbers[2 * i] ?? 0,
    y: numbers[2 * i + 1] ?? 0,
  }));
  if (isClosed) return points.length >= 3 ? { shape: 'area', points } : null;
  if (points.length < 2) return null;
  return { shape: points.length === 2 ? 'line' : 'path', points };
}

/** Absolute moves and lines alone: `M x y L x y ... Z`. */
function straightPath(text: string): SvgShape | null {
  const match = new RegExp(`^\\s*M((?:[\\s,L]*${numberText})+)\\s*(Z|z)?\\s*$`).exec(text);
  return match ? chain((match[1] ?? '').replaceAll('L', ' '), match[2] !== undefined) : null;
}
