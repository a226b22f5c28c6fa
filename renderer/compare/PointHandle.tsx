import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import { screenPoint, type XY } from '../../shared-lib/geometry/spaces.ts';
import { toImage, toScreen, type View } from '../../shared-lib/geometry/viewport.ts';
import styles from './ComparePane.module.css';

interface PointHandleProps {
  readonly number: number;
  readonly label: string;
  /** In pixels of the frame that is looked at. */
  readonly at: XY;
  readonly view: View;
  readonly isPicked: boolean;
  readonly onPick: () => void;
  /** While a hand moves it. */
  readonly onMove: (to: XY) => void;
  /** Once it is let go. */
  readonly onDone: (to: XY) => void;
  readonly onRemove: () => void;
}

const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** One matched point: dragged by hand, moved by the arrow keys, taken off with Delete. */
export function PointHandle(props: PointHandleProps) {
  const { number, label, at, view, isPicked, onPick, onMove, onDone, onRemove } = props;
  const grabbed = useRef<{ offset: XY; to: XY | null } | null>(null);
  const nudged = useRef<XY | null>(null);
  const here = toScreen(view, at);

  const handlePointerDown = (event: PointerEvent<HTMLButtonElement>) => {
    if (event.button !== 0) return;
    event.stopPropagation();
    event.currentTarget.setPointerCapture(event.pointerId);
    grabbed.current = { offset: { x: here.x - event.clientX, y: here.y - event.clientY }, to: null };
    onPick();
  };
  const handlePointerMove = (event: PointerEvent<HTMLButtonElement>) => {
    const hand = grabbed.current;
    if (!hand) return;
    event.stopPropagation();
    const to = toImage(view, screenPoint(event.clientX + hand.offset.x, event.clientY + hand.offset.y));
    hand.to = to;
    onMove(to);
  };
  const handlePointerUp = (event: PointerEvent<HTMLButtonElement>) => {
    const to = grabbed.current?.to;
    grabbed.current = null;
    if (to && event.type === 'pointerup') onDone(to);
  };
  const handleKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Delete' || event.key === 'Backspace') {
      event.preventDefault();
      event.stopPropagation();
      onRemove();
      return;
    }
    const arrow = arrows[event.key];
    if (!arrow || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    event.stopPropagation();
    // A pixel of the photo, or of the screen where that is more; ten with Shift.
    const step = (event.shiftKey ? 10 : 1) * Math.max(0.5, 1 / view.scale);
    const from = nudged.current ?? at;
    const to = { x: from.x + arrow[0] * step, y: from.y + arrow[1] * step };
    nudged.current = to;
    onMove(to);
  };
  const finishNudge = () => {
    const to = nudged.current;
    nudged.current = null;
    if (to) onDone(to);
  };

  return (
    <button
      type="button"
      className={styles.point}
      data-picked={isPicked || undefined}
      style={{ left: here.x, top: here.y }}
      aria-label={label}
      aria-keyshortcuts="ArrowLeft ArrowRight ArrowUp ArrowDown Delete"
      onPointerDown={handlePointerDown}
      onPointerMove={handlePointerMove}
      onPointerUp={handlePointerUp}
      onPointerCancel={handlePointerUp}
      onKeyDown={handleKeyDown}
      onKeyUp={finishNudge}
      onBlur={finishNudge}
      onFocus={onPick}
    >
      <svg viewBox="-24 -24 48 48" aria-hidden="true" focusable="false">
        <path
          className={styles.pointEdge}
          d="M0-15V-5M0 5V15M-15 0H-5M5 0H15M10 0A10 10 0 1 1-10 0A10 10 0 1 1 10 0Z"
        />
        <path
          className={styles.pointLine}
          d="M0-15V-5M0 5V15M-15 0H-5M5 0H15M10 0A10 10 0 1 1-10 0A10 10 0 1 1 10 0Z"
        />
      </svg>
      <span className={styles.pointNumber} aria-hidden="true">
        {number}
      </span>
    </button>
  );
}
