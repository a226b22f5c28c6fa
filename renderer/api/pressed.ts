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

const controls = 'button, input, select, textarea, label, summary, a';
let hit: Element | null = null;

/**
 * The second half of a double press belongs to what the first half hit. Where that has gone by then, as an option does
 * that was picked, it hits nothing: what has come to lie there was not meant.
 */
function handleClick(event: MouseEvent): void {
  const target = event.target instanceof Element ? event.target : null;
  const now = target?.closest(controls) ?? target;
  if (event.detail > 1 && now !== hit) {
    event.preventDefault();
    event.stopPropagation();
  } else hit = now;
}

/** Watches for presses anywhere in the window, before anything else hears of them. */
export function watchPresses(page: Window): void {
  const capture = { capture: true };
  page.addEventListener('pointerdown', handlePress, capture);
  page.addEventListener('click', handleClick, capture);
  for (const end of ['pointerup', 'pointercancel']) page.addEventListener(end, handleRelease, capture);
  // Without capture: a field's blur does not bubble, and only the window's own is meant.
  page.addEventListener('blur', handleRelease);
}
