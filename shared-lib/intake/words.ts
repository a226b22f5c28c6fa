import {
  type ArrivalView,
  arrivalViews,
  type EarlierWork,
  type FluidKind,
  type FluidLevel,
  type FluidReceived,
  type Intake,
} from '../model/intake.ts';

export const deedWords: Readonly<Record<EarlierWork['did'], string>> = {
  changed: 'changed',
  removed: 'removed',
  added: 'added',
  repaired: 'repaired',
  adjusted: 'adjusted',
  'not-known': 'something done, not known what',
};

export const fluidWords: Readonly<Record<FluidKind, string>> = {
  'engine-oil': 'engine oil',
  coolant: 'coolant',
  'hydraulic-oil': 'hydraulic oil',
  fuel: 'fuel',
  'gear-oil': 'gear oil',
  'brake-fluid': 'brake fluid',
  'battery-acid': 'battery acid',
};

export const levelWords: Readonly<Record<FluidLevel, string>> = {
  over: 'over the mark',
  'at-mark': 'at the mark',
  low: 'low',
  empty: 'none to be seen',
  'not-looked': 'not looked at',
};

export const viewWords: Readonly<Record<ArrivalView, string>> = {
  'front-left': 'front left corner',
  'front-right': 'front right corner',
  'rear-right': 'rear right corner',
  'rear-left': 'rear left corner',
  plate: 'plate and serial',
  'hour-meter': 'hour meter',
  wheels: 'tyres or tracks',
  underneath: 'under the engine',
};

/** `upper hose changed, by the owner, last spring` */
export function sayEarlierWork({ what, did, byWhom, whenDone }: EarlierWork): string {
  const by = byWhom.trim() === '' ? 'nobody said by whom' : `by ${byWhom.trim()}`;
  return [`${what.trim()}: ${deedWords[did]}`, by, whenDone.trim()].filter((each) => each !== '').join(', ');
}

/** `coolant: low, brown, half a litre added a day` */
export function sayFluid({ fluid, level, look, added }: FluidReceived): string {
  const topped = added.trim() === '' ? '' : `topped up: ${added.trim()}`;
  const parts = [levelWords[level], look.trim(), topped].filter((each) => each !== '');
  return `${fluidWords[fluid]}: ${parts.join(', ')}`;
}

/** Which views of the arrival have a photo and which have none. */
export function arrivalCoverage({ photos }: Intake): {
  readonly shown: ArrivalView[];
  readonly missing: ArrivalView[];
} {
  const has = (view: ArrivalView) => photos.some((photo) => photo.view === view);
  return { shown: arrivalViews.filter(has), missing: arrivalViews.filter((view) => !has(view)) };
}
