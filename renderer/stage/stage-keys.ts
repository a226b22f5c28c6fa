import type { StageController } from './stage-controller.ts';

/** Space presses at the cross-hair, but only if it was not held to move the photo. */
export interface HeldKeys {
  isSpaceDown: boolean;
  hasSpacePanned: boolean;
}

const zoomStep = 1.25;
const panStepPx = 90;
const farStep = 10;

const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

type Answer = (controller: StageController) => void;

const answers: Readonly<Record<string, Answer>> = {
  '+': (controller) => controller.zoomAtHand(zoomStep),
  '=': (controller) => controller.zoomAtHand(zoomStep),
  '-': (controller) => controller.zoomAtHand(1 / zoomStep),
  '0': (controller) => controller.navigate({ type: 'fit' }),
  '1': (controller) => controller.scaleAtHand(1),
  '[': (controller) => controller.send({ type: 'previous-vertex' }),
  ']': (controller) => controller.send({ type: 'next-vertex' }),
  Delete: (controller) => controller.send({ type: 'delete' }),
  Backspace: (controller) => controller.send({ type: controller.isPicking ? 'delete' : 'back' }),
  Escape: (controller) => controller.letGo(),
  z: (controller) => controller.holdLoupe(true),
  Z: (controller) => controller.holdLoupe(true),
  Enter: (controller) => {
    // With the mouse in hand Enter ends a path or area; with the cross-hair it presses there.
    if (controller.hasDraft && controller.snapshot.crossHair === null) controller.send({ type: 'finish' });
    else controller.pressAtCrossHair();
  },
};

export function answerKey(event: KeyboardEvent, controller: StageController, held: HeldKeys): void {
  if (event.altKey || event.metaKey) return;
  const arrow = arrows[event.key];
  if (arrow) {
    event.preventDefault();
    const [dx, dy] = arrow;
    const step = event.shiftKey ? farStep : 1;
    if (event.ctrlKey) controller.navigate({ type: 'pan', dx: -dx * panStepPx, dy: -dy * panStepPx });
    else controller.nudgeCrossHair(dx * step, dy * step);
    return;
  }
  if (event.ctrlKey) return;
  if (event.key === 'Tab') {
    cycle(event, controller);
    return;
  }
  if (event.key === ' ') {
    event.preventDefault();
    if (!event.repeat) Object.assign(held, { isSpaceDown: true, hasSpacePanned: false });
    return;
  }
  const answer = answers[event.key];
  if (!answer) return;
  event.preventDefault();
  answer(controller);
}

export function answerKeyUp(event: KeyboardEvent, controller: StageController, held: HeldKeys): void {
  if (event.key === 'z' || event.key === 'Z') controller.holdLoupe(false);
  if (event.key !== ' ' || !held.isSpaceDown) return;
  held.isSpaceDown = false;
  if (!held.hasSpacePanned) controller.pressAtCrossHair();
}

/** Tab goes from mark to mark, and past the last one out of the stage: the keyboard is never caught here. */
function cycle(event: KeyboardEvent, controller: StageController): void {
  const { marks, picked } = controller.toolView;
  if (!controller.isPicking || controller.hasDraft || marks.length === 0) return;
  const now = marks.findIndex((mark) => mark.id === picked);
  const isLeaving = event.shiftKey ? now === 0 : now === marks.length - 1;
  if (!isLeaving) event.preventDefault();
  controller.send({ type: event.shiftKey ? 'previous-mark' : 'next-mark' });
}
