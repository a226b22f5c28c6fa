/** What is exactly true of a picture: its camera, where named things are in mm and in pixels of the upright picture. */
import { type Camera, dot, project, type Vector } from './camera.ts';
import type { Scene } from './scene.ts';
import { lengthOf } from './strokes.ts';

const tidy = (v: number): number => Math.round(v * 1e6) / 1e6;
const pixel = (camera: Camera, p: Vector): number[] => project(camera, p).map((v) => Math.round(v * 1000) / 1000);
const point = (p: Vector): number[] => p.map(tidy);

export function truthOf(scene: Scene, camera: Camera): unknown {
  const { eye, right, down, forward } = camera;
  const rows = [right, down, forward];
  return {
    picture: `${scene.name}.jpg`,
    what: scene.what,
    units: 'mm; pixels of the upright picture, centres at whole numbers, x right, y down',
    width: camera.width,
    height: camera.height,
    orientation: scene.orientation,
    camera: {
      model: 'pinhole, no distortion: u = fx * c.x / c.z + cx, v = fy * c.y / c.z + cy, c = rotation * X + translation',
      fx: tidy(camera.focalPx),
      fy: tidy(camera.focalPx),
      cx: camera.cx,
      cy: camera.cy,
      rotation: rows.map((r) => r.map((v) => Math.round(v * 1e12) / 1e12)),
      translation: rows.map((r) => Math.round(-dot(r, eye) * 1e9) / 1e9),
      eye: point(eye),
    },
    planes: Object.fromEntries(
      Object.entries(scene.truth.planes).map(([name, p]) => [name, { origin: point(p.origin), u: point(p.u), v: point(p.v), what: p.what }]),
    ),
    features: Object.fromEntries(
      Object.entries(scene.truth.features).map(([name, p]) => [name, { mm: point(p), px: pixel(camera, p) }]),
    ),
    cracks: Object.fromEntries(
      Object.entries(scene.truth.cracks ?? {}).map(([name, line]) => {
        const first = line[0] ?? [0, 0, 0];
        const last = line[line.length - 1] ?? [0, 0, 0];
        return [name, {
          lengthMm: Math.round(lengthOf(line) * 1000) / 1000,
          endToEndMm: Math.round(lengthOf([first, last]) * 1000) / 1000,
          mm: line.map(point),
          px: line.map((p) => pixel(camera, p)),
        }];
      }),
    ),
    areas: Object.fromEntries(
      Object.entries(scene.truth.areas ?? {}).map(([name, line]) => [name, { mm: line.map(point), px: line.map((p) => pixel(camera, p)) }]),
    ),
    remarks: scene.truth.remarks ?? [],
  };
}
