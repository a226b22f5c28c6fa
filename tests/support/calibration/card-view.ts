import {
  type CardFace,
  columns,
  dotRadius,
  faceCorners,
  hasDot,
  isDark,
  quietSquares,
  rows,
} from '../../../shared-lib/calibration/card/face.ts';
import type { Size, XY } from '../../../shared-lib/geometry/spaces.ts';
import { blur } from '../../../shared-lib/tracing/blur.ts';
import type { GreyImage } from '../../../shared-lib/tracing/grey.ts';
import { gaussian, seeded } from '../../reference/shared-lib/tracing/drawn-surface.ts';

/** A photo of a card as a camera would take it, drawn from its description: where every crossing lies is exact. */
export interface CardView {
  readonly photo: Size;
  readonly face: CardFace;
  readonly tiltDegrees: number;
  /** Share of the photo's longer side that the field is long. */
  readonly fill: number;
  readonly blurPx: number;
  /** Of 255. */
  readonly noise: number;
  /** What reaches the shaded part, 1 for no shade. */
  readonly shade: number;
  /** seen = straight * (1 + barrel * r^2), r = 1 in the corners: another model than the finder's. */
  readonly barrel: number;
}

export interface DrawnView {
  readonly image: GreyImage;
  /** In the order of `faceCorners`. */
  readonly truth: readonly XY[];
  /** From a point of the card's plane, mm, to the photo. */
  readonly see: (mm: XY) => XY;
}

/** @param random  draws pose, light and noise */
export function drawView(view: CardView, background: GreyImage, random: () => number): DrawnView {
  const camera = pose(view, random);
  const light = lighting(view, random);
  const { width, height } = view.photo;
  const linear = new Float32Array(width * height);
  for (let y = 0; y < height; y += 1) {
    const from = Math.floor((y * background.height) / height) * background.width;
    for (let x = 0; x < width; x += 1) {
      const level = background.data[from + Math.floor((x * background.width) / width)] as number;
      linear[y * width + x] = (linearOf[Math.round(level)] as number) * light(x, y);
    }
  }
  const paper = 0.75 + 0.2 * random();
  const ink = 0.03 + 0.06 * random();
  paint(linear, view, camera, (share) => ink + share * (paper - ink), light);
  const soft = view.blurPx > 0 ? blur(linear, width, height, view.blurPx) : linear;
  for (let y = 0; y < height; y += 1) {
    // Each row reads the same long draw of noise from another place on.
    const from = Math.floor(random() * noise.length);
    for (let x = 0, at = y * width; x < width; x += 1, at += 1) {
      const level = fromLinear(soft[at] as number) + view.noise * (noise[(from + x) % noise.length] as number);
      soft[at] = Math.min(255, Math.max(0, Math.round(level)));
    }
  }
  const { squareMm } = view.face;
  return {
    image: { width, height, left: 0, top: 0, data: soft },
    truth: faceCorners.map(({ x, y }) => camera.see({ x: x * squareMm, y: y * squareMm })),
    see: camera.see,
  };
}

interface Camera {
  readonly see: (mm: XY) => XY;
  readonly back: (px: XY) => XY | null;
}

/** A pinhole with a bent lens, so placed that the whole card is in the photo. */
function pose({ photo, face, tiltDegrees, fill, barrel }: CardView, random: () => number): Camera {
  const field = { x: columns * face.squareMm, y: rows * face.squareMm };
  const long = Math.max(photo.width, photo.height);
  const focal = long * (0.7 + 0.5 * random());
  const tilt = (tiltDegrees * Math.PI) / 180;
  for (let attempt = 0; ; attempt += 1) {
    const [spin, lean] = [2 * Math.PI * random(), 2 * Math.PI * random()];
    const away = (focal * field.x) / (fill * long);
    const aim = {
      x: photo.width * (0.5 + 0.7 * (random() - 0.5)),
      y: photo.height * (0.5 + 0.7 * (random() - 0.5)),
    };
    const middle = { x: (photo.width - 1) / 2, y: (photo.height - 1) / 2 };
    const radius = Math.hypot(photo.width, photo.height) / 2;
    const [cs, ss, cl, sl] = [Math.cos(spin), Math.sin(spin), Math.cos(lean), Math.sin(lean)];
    const [ct, st] = [Math.cos(tilt), Math.sin(tilt)];
    // Card axes turned by `lean`, tilted about the first, turned by `spin`, then moved so that its middle lies on the aim.
    const axis = (x: number, y: number): [number, number, number] => {
      const [u, v] = [x * cl + y * sl, y * cl - x * sl];
      const [p, q] = [u, v * ct];
      return [p * cs - q * ss, p * ss + q * cs, v * st];
    };
    const [ax, ay] = [axis(1, 0), axis(0, 1)];
    const origin = [
      ((aim.x - middle.x) / focal) * away - (ax[0] * field.x + ay[0] * field.y) / 2,
      ((aim.y - middle.y) / focal) * away - (ax[1] * field.x + ay[1] * field.y) / 2,
      away - (ax[2] * field.x + ay[2] * field.y) / 2,
    ] as const;
    const see = ({ x, y }: XY): XY => {
      const z = origin[2] + ax[2] * x + ay[2] * y;
      const sx = (focal * (origin[0] + ax[0] * x + ay[0] * y)) / z;
      const sy = (focal * (origin[1] + ax[1] * x + ay[1] * y)) / z;
      const by = 1 + (barrel * (sx * sx + sy * sy)) / (radius * radius);
      return { x: middle.x + sx * by, y: middle.y + sy * by };
    };
    const edge = quietSquares * face.squareMm;
    const inside = [
      [-edge, -edge],
      [field.x + edge, -edge],
      [field.x + edge, field.y + edge],
      [-edge, field.y + edge],
    ].every(([x = 0, y = 0]) => {
      const at = see({ x, y });
      return at.x > 4 && at.y > 4 && at.x < photo.width - 5 && at.y < photo.height - 5;
    });
    if (!inside && attempt < 500) continue;
    if (!inside) throw new Error('no place for the card in this photo');
    const back = (px: XY): XY | null => {
      const [dx, dy] = [px.x - middle.x, px.y - middle.y];
      let by = 1;
      for (let round = 0; round < 6; round += 1) {
        by = 1 + (barrel * ((dx / by) ** 2 + (dy / by) ** 2)) / (radius * radius);
      }
      const [rx, ry] = [dx / by / focal, dy / by / focal];
      // origin + a x + b y = s (rx, ry, 1): two equations once s is put in.
      const [a, b] = [ax[0] - rx * ax[2], ay[0] - rx * ay[2]];
      const [c, d] = [ax[1] - ry * ax[2], ay[1] - ry * ay[2]];
      const [e, f] = [rx * origin[2] - origin[0], ry * origin[2] - origin[1]];
      const determinant = a * d - b * c;
      return determinant === 0 ? null : { x: (e * d - b * f) / determinant, y: (a * f - c * e) / determinant };
    };
    return { see, back };
  }
}

/** A gradient over the photo and, where asked for, a shadow with a soft edge. */
function lighting({ photo, shade }: CardView, random: () => number): (x: number, y: number) => number {
  const [way, fall] = [2 * Math.PI * random(), 0.3 * random()];
  const [gx, gy] = [(fall * Math.cos(way)) / photo.width, (fall * Math.sin(way)) / photo.height];
  const across = 2 * Math.PI * random();
  const through = {
    x: photo.width * (0.3 + 0.4 * random()),
    y: photo.height * (0.3 + 0.4 * random()),
  };
  const softness = 3 + 40 * random();
  const [nx, ny] = [Math.cos(across), Math.sin(across)];
  return (x, y) => {
    const even = 1 + gx * (x - photo.width / 2) + gy * (y - photo.height / 2);
    if (shade === 1) return even;
    const depth = ((x - through.x) * nx + (y - through.y) * ny) / softness;
    return even * (shade + (1 - shade) * Math.min(1, Math.max(0, depth + 0.5)));
  };
}

const samples = 5;

function paint(
  linear: Float32Array,
  { face, photo }: CardView,
  { see, back }: Camera,
  reflects: (share: number) => number,
  light: (x: number, y: number) => number,
): void {
  const edge = quietSquares;
  const corners = [
    [-edge, -edge],
    [columns + edge, -edge],
    [columns + edge, rows + edge],
    [-edge, rows + edge],
  ].map(([x = 0, y = 0]) => see({ x: x * face.squareMm, y: y * face.squareMm }));
  const xs = corners.map(({ x }) => x);
  const ys = corners.map(({ y }) => y);
  // A bent edge may bulge past its ends.
  const spare = 0.03 * (Math.max(...xs) - Math.min(...xs) + Math.max(...ys) - Math.min(...ys)) + 2;
  const left = Math.max(0, Math.floor(Math.min(...xs) - spare));
  const right = Math.min(photo.width - 1, Math.ceil(Math.max(...xs) + spare));
  const top = Math.max(0, Math.floor(Math.min(...ys) - spare));
  const bottom = Math.min(photo.height - 1, Math.ceil(Math.max(...ys) + spare));
  /** 1 white, 0 ink, -1 beside the card. */
  const printed = (u: number, v: number): number => {
    if (u < -edge || v < -edge || u > columns + edge || v > rows + edge) return -1;
    return isWhite(face, u, v) ? 1 : 0;
  };
  // The camera is worked out at the pixels' own corners; inside a pixel it is as good as straight.
  const row = (y: number) => {
    const count = right - left + 2;
    const [u, v, print] = [new Float64Array(count), new Float64Array(count), new Int8Array(count)];
    for (let k = 0; k < count; k += 1) {
      const mm = back({ x: left + k - 0.5, y });
      u[k] = mm ? mm.x / face.squareMm : 1e6;
      v[k] = mm ? mm.y / face.squareMm : 1e6;
      print[k] = printed(u[k] as number, v[k] as number);
    }
    return { u, v, print };
  };
  let above = row(top - 0.5);
  for (let y = top; y <= bottom; y += 1) {
    const below = row(y + 0.5);
    for (let k = 0; k <= right - left; k += 1) {
      const first = above.print[k] as number;
      const isFlat = above.print[k + 1] === first && below.print[k] === first && below.print[k + 1] === first;
      if (isFlat && first < 0) continue;
      const at = y * photo.width + left + k;
      if (isFlat) {
        linear[at] = reflects(first) * light(left + k, y);
        continue;
      }
      const [u0, v0] = [above.u[k] as number, above.v[k] as number];
      const [ux, vx] = [(above.u[k + 1] as number) - u0, (above.v[k + 1] as number) - v0];
      const [uy, vy] = [(below.u[k] as number) - u0, (below.v[k] as number) - v0];
      let covered = 0;
      let white = 0;
      for (let n = 0; n < samples * samples; n += 1) {
        const s = ((n % samples) + 0.5) / samples;
        const t = (Math.floor(n / samples) + 0.5) / samples;
        const there = printed(u0 + s * ux + t * uy, v0 + s * vx + t * vy);
        if (there < 0) continue;
        covered += 1;
        white += there;
      }
      if (covered === 0) continue;
      const share = covered / (samples * samples);
      linear[at] = (1 - share) * (linear[at] as number) + share * reflects(white / covered) * light(left + k, y);
    }
    above = below;
  }
}

/** What is printed at a place of the face, in squares. */
export function isWhite(face: CardFace, u: number, v: number): boolean {
  const [column, row] = [Math.floor(u), Math.floor(v)];
  const dot = hasDot(face, column, row);
  if (dot === null) return true;
  const inDot = dot && Math.hypot(u - column - 0.5, v - row - 0.5) < dotRadius;
  return isDark(column, row) === inDot;
}

/** The curve of IEC 61966-2-1 (sRGB). */
const linearOf = Float64Array.from({ length: 256 }, (_, level) => toLinear(level));

function toLinear(level: number): number {
  const v = level / 255;
  return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
}

const steps = 4096;
const levelOf = Float64Array.from({ length: steps + 2 }, (_, k) => {
  const v = k / steps;
  return 255 * (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055);
});

/** Between two of its entries the curve is as good as straight. */
function fromLinear(light: number): number {
  const at = steps * Math.min(1, Math.max(0, light));
  const below = Math.floor(at);
  return (levelOf[below] as number) + (at - below) * ((levelOf[below + 1] as number) - (levelOf[below] as number));
}

const noise = ((random) => Float32Array.from({ length: 65_537 }, () => gaussian(random)))(seeded(5));
