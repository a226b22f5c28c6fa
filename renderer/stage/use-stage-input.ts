import { type RefObject, useEffect } from 'react';
import { distance } from '../../shared-lib/geometry/plane.ts';
import { type ScreenPoint, screenPoint } from '../../shared-lib/geometry/spaces.ts';
import { toImage } from '../../shared-lib/geometry/viewport.ts';
import { wheelFactor } from './navigation/machine.ts';
import type { StageController } from './stage-controller.ts';
import { answerKey, answerKeyUp, type HeldKeys } from './stage-keys.ts';
import { type PointerKind, shakePx } from './tools/machine.ts';

const wheelUnits = ['pixel', 'line', 'page'] as const;

/**
 * Turns the window's raw pointer, wheel and key events into events on the photo, here and nowhere else. Two fingers,
 * the middle button or Space move the photo; everything else goes to the tool.
 */
export function useStageInput(element: RefObject<HTMLElement | null>, controller: StageController): void {
  useEffect(() => {
    const stage = element.current;
    return stage ? listen(stage, controller) : undefined;
  }, [element, controller]);
}

function listen(stage: HTMLElement, controller: StageController): () => void {
  const stop = new AbortController();
  const { signal } = stop;
  const fingers = new Map<number, ScreenPoint>();
  const held: HeldKeys = { isSpaceDown: false, hasSpacePanned: false };
  let lastPress: { at: ScreenPoint; atMs: number } | null = null;

  let box = stage.getBoundingClientRect();

  /** The stage does not shift under a held pointer, and measuring it at every move would hold up the frame. */
  const where = (event: MouseEvent): ScreenPoint => {
    if (event.type !== 'pointermove' || event.buttons === 0) box = stage.getBoundingClientRect();
    return screenPoint(event.clientX - box.left, event.clientY - box.top);
  };
  const onPhoto = (at: ScreenPoint) => toImage(controller.snapshot.view, at);
  const twoFingers = () => {
    const [a, b] = fingers.values();
    return a && b ? { a, b } : null;
  };

  function handleDown(event: PointerEvent): void {
    const at = where(event);
    const by = kindOf(event);
    stage.setPointerCapture(event.pointerId);
    stage.focus({ preventScroll: true });
    event.preventDefault();
    if (by === 'touch') fingers.set(event.pointerId, at);
    const pair = twoFingers();
    if (pair) {
      controller.send({ type: 'abort' });
      controller.navigate({ type: 'two-fingers', ...pair });
      return;
    }
    controller.pointAt({ at, by, isDown: true });
    if (event.button === 1 || (event.button === 0 && held.isSpaceDown)) {
      held.hasSpacePanned = true;
      controller.navigate({ type: 'grab', at });
      return;
    }
    if (event.button !== 0) return;
    const again = isAgain(lastPress, at, event.timeStamp, shakePx[by] * 2);
    lastPress = again ? null : { at, atMs: event.timeStamp };
    controller.send({ type: 'down', at: onPhoto(at), by, again });
  }

  function handleMove(event: PointerEvent): void {
    const at = where(event);
    const by = kindOf(event);
    if (fingers.has(event.pointerId)) fingers.set(event.pointerId, at);
    const pair = twoFingers();
    if (pair) {
      controller.navigate({ type: 'pinch', ...pair });
      return;
    }
    controller.pointAt({ at, by, isDown: event.buttons !== 0 });
    if (controller.isNavigating) {
      controller.navigate({ type: 'drag', at });
      return;
    }
    for (const part of partsOf(event)) controller.send({ type: 'move', at: onPhoto(where(part)), by });
  }

  function handleUp(event: PointerEvent): void {
    const at = where(event);
    const by = kindOf(event);
    const wasPair = twoFingers() !== null;
    fingers.delete(event.pointerId);
    controller.pointAt({ at, by, isDown: false });
    if (controller.isNavigating || wasPair) {
      // The finger that is left of two does not go on drawing.
      controller.navigate({ type: 'release' });
      controller.send({ type: 'abort' });
      return;
    }
    if (event.type === 'pointercancel') controller.send({ type: 'abort' });
    else if (event.button === 0) controller.send({ type: 'up', at: onPhoto(at), by });
  }

  function handleWheel(event: WheelEvent): void {
    event.preventDefault();
    const unit = wheelUnits[event.deltaMode] ?? 'pixel';
    controller.navigate({ type: 'zoom', at: where(event), factor: wheelFactor(event.deltaY, unit, event.ctrlKey) });
  }

  function handleBlur(): void {
    held.isSpaceDown = false;
    controller.holdLoupe(false);
  }

  stage.addEventListener('pointerdown', handleDown, { signal });
  stage.addEventListener('pointermove', handleMove, { signal });
  stage.addEventListener('pointerup', handleUp, { signal });
  stage.addEventListener('pointercancel', handleUp, { signal });
  stage.addEventListener('pointerleave', () => controller.pointAt(null), { signal });
  stage.addEventListener('wheel', handleWheel, { signal, passive: false });
  stage.addEventListener('keydown', (event) => answerKey(event, controller, held), { signal });
  stage.addEventListener('keyup', (event) => answerKeyUp(event, controller, held), { signal });
  stage.addEventListener('blur', handleBlur, { signal });
  stage.addEventListener('contextmenu', (event) => event.preventDefault(), { signal });
  return () => stop.abort();
}

function kindOf(event: PointerEvent): PointerKind {
  return event.pointerType === 'touch' || event.pointerType === 'pen' ? event.pointerType : 'mouse';
}

/** Every place a fast hand went through since the last frame, so that a freehand line has no corners. */
function partsOf(event: PointerEvent): PointerEvent[] {
  const parts = event.getCoalescedEvents();
  return parts.length > 0 ? parts : [event];
}

/** Whether two presses are one double press. */
function isAgain(
  last: { at: ScreenPoint; atMs: number } | null,
  at: ScreenPoint,
  atMs: number,
  reachPx: number,
): boolean {
  return last !== null && atMs - last.atMs < 400 && distance(last.at, at) <= reachPx;
}
