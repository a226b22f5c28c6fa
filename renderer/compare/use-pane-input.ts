import { type RefObject, useEffect, useEffectEvent } from 'react';
import { type ScreenPoint, type Size, screenPoint, type XY } from '../../shared-lib/geometry/spaces.ts';
import { toImage, type View } from '../../shared-lib/geometry/viewport.ts';
import {
  type NavigationEvent,
  type NavigationState,
  navigate,
  still,
  wheelFactor,
} from '../stage/navigation/machine.ts';

interface PaneInput {
  readonly view: View;
  readonly frame: Size;
  readonly stage: Size;
  readonly onView: (view: View) => void;
  /** A press that did not move, in pixels of the frame. */
  readonly onPress: (at: XY) => void;
}

const wheelUnits = ['pixel', 'line', 'page'] as const;
const shakePx = 4;
const panKeys: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [60, 0],
  ArrowRight: [-60, 0],
  ArrowUp: [0, 60],
  ArrowDown: [0, -60],
};

/** Moving what is looked at, by hand, wheel, two fingers and keys. */
export function usePaneInput(element: RefObject<HTMLElement | null>, input: PaneInput): void {
  const send = useEffectEvent((state: NavigationState, event: NavigationEvent): NavigationState => {
    const next = navigate(state, event, input.view, { photo: input.frame, stage: input.stage });
    if (next.view !== input.view) input.onView(next.view);
    return next.state;
  });
  const press = useEffectEvent((at: ScreenPoint) => input.onPress(toImage(input.view, at)));
  useEffect(() => {
    const pane = element.current;
    return pane ? listen(pane, send, press) : undefined;
  }, [element]);
}

function listen(
  pane: HTMLElement,
  send: (state: NavigationState, event: NavigationEvent) => NavigationState,
  press: (at: ScreenPoint) => void,
): () => void {
  const stop = new AbortController();
  const { signal } = stop;
  const fingers = new Map<number, ScreenPoint>();
  let state: NavigationState = still;
  let pressedAt: ScreenPoint | null = null;

  const where = (event: MouseEvent): ScreenPoint => {
    const box = pane.getBoundingClientRect();
    return screenPoint(event.clientX - box.left, event.clientY - box.top);
  };
  const step = (event: NavigationEvent) => {
    state = send(state, event);
  };
  const twoFingers = () => {
    const [a, b] = fingers.values();
    return a && b ? { a, b } : null;
  };

  function handleDown(event: PointerEvent): void {
    if (event.target instanceof Element && event.target.closest('button')) return;
    if (event.button > 1) return;
    const at = where(event);
    pane.setPointerCapture(event.pointerId);
    pane.focus({ preventScroll: true });
    event.preventDefault();
    fingers.set(event.pointerId, at);
    const pair = twoFingers();
    pressedAt = pair ? null : at;
    step(pair ? { type: 'two-fingers', ...pair } : { type: 'grab', at });
  }
  function handleMove(event: PointerEvent): void {
    if (!fingers.has(event.pointerId)) return;
    const at = where(event);
    fingers.set(event.pointerId, at);
    const pair = twoFingers();
    if (pressedAt && Math.hypot(at.x - pressedAt.x, at.y - pressedAt.y) > shakePx) pressedAt = null;
    if (pair) step({ type: 'pinch', ...pair });
    else if (!pressedAt) step({ type: 'drag', at });
  }
  function handleUp(event: PointerEvent): void {
    if (!fingers.delete(event.pointerId)) return;
    step({ type: 'release' });
    if (pressedAt && event.type === 'pointerup') press(pressedAt);
    pressedAt = null;
  }
  function handleWheel(event: WheelEvent): void {
    event.preventDefault();
    const unit = wheelUnits[event.deltaMode] ?? 'pixel';
    step({ type: 'zoom', at: where(event), factor: wheelFactor(event.deltaY, unit, event.ctrlKey) });
  }
  function handleKey(event: KeyboardEvent): void {
    if (event.target !== pane || event.ctrlKey || event.altKey || event.metaKey) return;
    const middle = screenPoint(pane.clientWidth / 2, pane.clientHeight / 2);
    const pan = panKeys[event.key];
    if (pan) step({ type: 'pan', dx: pan[0], dy: pan[1] });
    else if (event.key === '+' || event.key === '=') step({ type: 'zoom', at: middle, factor: 1.25 });
    else if (event.key === '-') step({ type: 'zoom', at: middle, factor: 0.8 });
    else if (event.key === '0') step({ type: 'fit' });
    else if (event.key === 'Enter') press(middle);
    else return;
    event.preventDefault();
  }

  pane.addEventListener('pointerdown', handleDown, { signal });
  pane.addEventListener('pointermove', handleMove, { signal });
  pane.addEventListener('pointerup', handleUp, { signal });
  pane.addEventListener('pointercancel', handleUp, { signal });
  pane.addEventListener('wheel', handleWheel, { signal, passive: false });
  pane.addEventListener('keydown', handleKey, { signal });
  return () => stop.abort();
}
