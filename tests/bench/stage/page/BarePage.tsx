import Konva from 'konva';
import { useEffect, useRef } from 'react';
import { sceneFromAddress } from './scene.ts';

const scene = sceneFromAddress();

/**
 * What Konva can do at best with the same photo and as many lines: photo, still lines and the dragged line on layers of
 * their own; panning and zooming only move the finished canvases by a CSS transform. No tags, no offsets, no geometry.
 */
export function BarePage() {
  const host = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const container = host.current;
    if (!container) return;
    const { clientWidth: width, clientHeight: height } = container;
    const stage = new Konva.Stage({ container, width, height, listening: false });
    const photo = new Konva.Layer({ listening: false });
    const still = new Konva.Layer({ listening: false });
    const overlay = new Konva.Layer({ listening: false });
    stage.add(photo, still, overlay);
    const scale = Math.min(width / scene.photo.width, height / scene.photo.height);
    for (const mark of scene.marks) for (const line of linesOf(mark.points, scale)) still.add(line);
    const dragged = linesOf(scene.marks[0]?.points ?? [], scale);
    for (const line of dragged) overlay.add(line);
    const image = new Image();
    image.onload = () => {
      photo.add(new Konva.Image({ image, width: scene.photo.width * scale, height: scene.photo.height * scale }));
      container.dataset.ready = 'true';
    };
    image.src = scene.screenUrl;
    const content = stage.content;
    content.style.willChange = 'transform';
    container.addEventListener('pointermove', (event) => {
      if (event.ctrlKey) {
        const zoom = 1 + event.clientX / 1000;
        content.style.transform = `scale(${zoom})`;
      } else if (event.shiftKey)
        content.style.transform = `translate(${event.clientX - 200}px, ${event.clientY - 200}px)`;
      else {
        for (const line of dragged) line.points([...line.points().slice(0, -2), event.clientX, event.clientY]);
        overlay.batchDraw();
      }
    });
    return () => {
      stage.destroy();
    };
  }, []);
  return <div ref={host} className="bare" id="bare" />;
}

function linesOf(points: readonly { x: number; y: number }[], scale: number): Konva.Line[] {
  const flat = points.flatMap(({ x, y }) => [x * scale, y * scale]);
  return [
    ['#0b0d12', 9],
    ['#2b45b4', 7],
    ['#ffffff', 3],
  ].map(
    ([stroke, strokeWidth]) =>
      new Konva.Line({
        points: flat.length > 2 ? flat : [...flat, ...flat.map((value) => value + 10)],
        stroke: String(stroke),
        strokeWidth: Number(strokeWidth),
        lineCap: 'round',
        lineJoin: 'round',
        perfectDrawEnabled: false,
        listening: false,
      }),
  );
}
