let isPressed = false;
const waiting: (() => void)[] = [];

function handlePress(): void {
  isPressed = true;
}

/** Lets go once the click that ends the press was delivered: it comes before the next timer. */
function handleRelease(): void {
  setTimeout(() => {
    isPressed = false;
    for (const callback of waiting.splice(0)) callback();
  });
}

/**
 * Runs soon, but not while a finger or a button is down: what an answer adds to the page would move the thing pressed
 * away from under the finger, and its click would go to nothing or to the wrong thing.
 */
export function whenNothingIsPressed(callback: () => void): void {
  setTimeout(() => {
    if (isPressed) waiting.push(callback);
    else callback();
  });
}

/** Watches for presses anywhere in the window, before anything else hears of them. */
export function watchPresses(page: Window): void {
  const capture = { capture: true };
  page.addEventListener('pointerdown', handlePress, capture);
  for (const end of ['pointerup', 'pointercancel']) page.addEventListener(end, handleRelease, capture);
  // Without capture: a field's blur does not bubble, and only the window's own is meant.
  page.addEventListener('blur', handleRelease);
}
