import { createStore, useStore } from '../api/store.ts';

export const visitPages = ['page', 'photos', 'sheets', 'causes', 'choices', 'work', 'report'] as const;
export type VisitPage = (typeof visitPages)[number];

/** Where the window stands. Everything a place needs to be drawn again is in it. */
export type Place =
  | { readonly name: 'floor' }
  | { readonly name: 'take-in' }
  | { readonly name: 'machine'; readonly machineId: string }
  | {
      readonly name: 'visit';
      readonly visitId: string;
      readonly page: VisitPage;
      /** On the photos page: which photo is on the stage. */
      readonly shotId?: string | undefined;
      /** There too: the earlier photo that lies under it. */
      readonly thenShotId?: string | undefined;
      /** The finding whose card is open. */
      readonly findingId?: string | undefined;
      /** On the sheets page: which sheet lies open, where it is taken, and the reading it is written into. */
      readonly sheet?: string | undefined;
      readonly at?: string | undefined;
      readonly readingId?: string | undefined;
      /** On the choices page: whose statement is read back, where it is not a finding's. */
      readonly choiceId?: string | undefined;
    }
  | { readonly name: 'setup' };

/** The way one came, and the way one went back from. */
export interface Trail {
  readonly back: readonly Place[];
  readonly here: Place;
  readonly forward: readonly Place[];
}

const longestTrail = 100;

export const firstTrail: Trail = { back: [], here: { name: 'floor' }, forward: [] };

function isSamePlace(a: Place, b: Place): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

/** A step to a place. Going where one stands is no step. */
export function gone(trail: Trail, to: Place): Trail {
  if (isSamePlace(trail.here, to)) return trail;
  return { back: [...trail.back, trail.here].slice(-longestTrail), here: to, forward: [] };
}

/** Another view of the same place, without a step on the way back: the next photo of a visit. */
export function replaced(trail: Trail, by: Place): Trail {
  return isSamePlace(trail.here, by) ? trail : { ...trail, here: by };
}

export function wentBack(trail: Trail): Trail {
  const to = trail.back.at(-1);
  if (to === undefined) return trail;
  return { back: trail.back.slice(0, -1), here: to, forward: [trail.here, ...trail.forward] };
}

export function wentForward(trail: Trail): Trail {
  const [to, ...rest] = trail.forward;
  if (to === undefined) return trail;
  return { back: [...trail.back, trail.here], here: to, forward: rest };
}

const trail = createStore<Trail>(firstTrail);

export function usePlace(): Place {
  return useStore(trail).here;
}

export function go(to: Place): void {
  trail.set((now) => gone(now, to));
}

/** @param isHere  for an answer that may arrive late: whether the window still stands where it was asked for */
export function replacePlace(by: Place, isHere: (here: Place) => boolean = () => true): void {
  trail.set((now) => (isHere(now.here) ? replaced(now, by) : now));
}

export function goBack(): void {
  trail.set(wentBack);
}

export function goForward(): void {
  trail.set(wentForward);
}

type VisitPlace = Extract<Place, { name: 'visit' }>;

/** Places of a visit that were seen, the last one first. */
const seenOf = (visitId: string, { back, here, forward }: Trail): VisitPlace[] =>
  [here, ...back.toReversed(), ...forward].flatMap((place) =>
    place.name === 'visit' && place.visitId === visitId ? [place] : [],
  );

/** Where one was last in a visit: going on with it leads there. */
export function lastPlaceOf(visitId: string, way: Trail): Place {
  return seenOf(visitId, way)[0] ?? { name: 'visit', visitId, page: 'page' };
}

/** A page of a visit as it opens when it is turned to: the photos at the one that was on the stage last. */
export function pageOf(visitId: string, page: VisitPage, way: Trail): Place {
  const shotId =
    page === 'photos' ? seenOf(visitId, way).find((place) => place.shotId !== undefined)?.shotId : undefined;
  return { name: 'visit', visitId, page, ...(shotId === undefined ? {} : { shotId }) };
}

export function turnTo(visitId: string, page: VisitPage): void {
  trail.set((now) => gone(now, pageOf(visitId, page, now)));
}

export function lastPlaceIn(visitId: string): Place {
  return lastPlaceOf(visitId, trail.get());
}
