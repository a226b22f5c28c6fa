import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import { Icon } from '../ui/Icon.tsx';
import styles from './ComparePane.module.css';

interface SwipeLineProps {
  /** Share of the width that shows the earlier photo, 0 to 1. */
  readonly share: number;
  readonly onShare: (share: number) => void;
}

const steps: Readonly<Record<string, number>> = { ArrowLeft: -0.02, ArrowRight: 0.02, PageUp: 0.1, PageDown: -0.1 };
const inside = (share: number): number => Math.min(1, Math.max(0, share));

/** The line between then and now: dragged, or moved by the arrow keys. */
export function SwipeLine({ share, onShare }: SwipeLineProps) {
  const isHeld = useRef(false);
  const handleMove = (event: PointerEvent<HTMLButtonElement>) => {
    const pane = event.currentTarget.parentElement?.getBoundingClientRect();
    if (!isHeld.current || !pane) return;
    onShare(inside((event.clientX - pane.left) / pane.width));
  };
  const handleKey = (event: KeyboardEvent) => {
    const step = event.key === 'Home' ? -1 : event.key === 'End' ? 1 : steps[event.key];
    if (step === undefined || event.ctrlKey || event.altKey) return;
    event.preventDefault();
    onShare(inside(share + step));
  };
  return (
    <button
      type="button"
      className={styles.swipe}
      role="slider"
      aria-label="Line between then and now"
      aria-valuemin={0}
      aria-valuemax={100}
      aria-valuenow={Math.round(share * 100)}
      aria-valuetext={`${Math.round(share * 100)} % then`}
      style={{ left: `${share * 100}%` }}
      onPointerDown={(event) => {
        isHeld.current = true;
        event.currentTarget.setPointerCapture(event.pointerId);
      }}
      onPointerMove={handleMove}
      onPointerUp={() => {
        isHeld.current = false;
      }}
      onPointerCancel={() => {
        isHeld.current = false;
      }}
      onKeyDown={handleKey}
    >
      <span>
        <Icon name="swipe" />
      </span>
    </button>
  );
}
