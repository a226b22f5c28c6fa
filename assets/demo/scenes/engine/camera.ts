/**
 * A pinhole camera, in the usual computer-vision sense: x right, y down, z forward; pixel centres at whole numbers.
 * A world point X (mm) lands on pixel  u = fx * c.x / c.z + cx,  v = fy * c.y / c.z + cy,  with  c = R X + t.
 * There is no lens distortion. The lens blur is taken symmetrically about the pinhole, so it moves nothing.
 */
export type Vector = readonly [number, number, number];

export interface Camera {
  readonly width: number;
  readonly height: number;
  readonly focalPx: number;
  readonly cx: number;
  readonly cy: number;
  readonly eye: Vector;
  readonly right: Vector;
  readonly down: Vector;
  readonly forward: Vector;
}

export const subtract = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const unit = (a: Vector): Vector => {
  const l = Math.sqrt(dot(a, a));
  return [a[0] / l, a[1] / l, a[2] / l];
};

export interface View {
  readonly width: number;
  readonly height: number;
  /** Focal length in widths of the longer edge: 1.1 is a phone, 2 a phone's longer lens. */
  readonly focal: number;
  readonly eye: Vector;
  readonly target: Vector;
  readonly up: Vector;
  readonly rollDegrees?: number;
}

/** `scale` below 1 gives a small preview of the same picture. */
export function cameraOf(view: View, scale: number): Camera {
  const width = Math.round(view.width * scale);
  const height = Math.round(view.height * scale);
  const forward = unit(subtract(view.target, view.eye));
  const level = unit(cross(forward, view.up));
  const steep = cross(forward, level);
  const roll = ((view.rollDegrees ?? 0) * Math.PI) / 180;
  const c = Math.cos(roll);
  const s = Math.sin(roll);
  const right: Vector = [level[0] * c + steep[0] * s, level[1] * c + steep[1] * s, level[2] * c + steep[2] * s];
  const down: Vector = [steep[0] * c - level[0] * s, steep[1] * c - level[1] * s, steep[2] * c - level[2] * s];
  return {
    width,
    height,
    focalPx: view.focal * Math.max(width, height),
    cx: (width - 1) / 2,
    cy: (height - 1) / 2,
    eye: view.eye,
    right,
    down,
    forward,
  };
}

export function project(camera: Camera, point: Vector): [number, number] {
  const d = subtract(point, camera.eye);
  const z = dot(d, camera.forward);
  return [
    (camera.focalPx * dot(d, camera.right)) / z + camera.cx,
    (camera.focalPx * dot(d, camera.down)) / z + camera.cy,
  ];
}
