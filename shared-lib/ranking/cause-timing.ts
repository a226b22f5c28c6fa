/** What is known of when a condition began. Days as `2026-06-08`. */
export interface KnownTimes {
  /** The latest day on which it is known not to have been there, and how that is known. */
  readonly absentOn: { readonly date: string; readonly known: AbsentKnown } | null;
  /** The earliest day on which it is known to have been there. */
  readonly thereOn: string | null;
}

/** Said so by the mechanic; looked for then and not found; or the part itself was fitted only then. */
export type AbsentKnown = 'said' | 'not-found' | 'part-fitted';

export interface ImpossibleCause {
  readonly absentOn: string;
  readonly known: AbsentKnown;
  readonly thereOn: string;
  /** Days the condition takes to form, where that is what makes it impossible; else null. */
  readonly formsInDays: number | null;
}

/** Conditions that cannot form in less. Source: the handbook's chapter 6.6 (scale takes months); common practice, no source. */
const formsInDays: ReadonlyMap<string, number> = new Map([['scale', 30]]);

const dayMs = 86_400_000;
const daysBetween = (from: string, to: string): number =>
  (Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / dayMs;

/**
 * Whether a cause cannot have preceded its effect: it was not there yet on a day on which the effect was, or it takes longer
 * to form than lies between. On one and the same day nobody can say which came first.
 *
 * @returns  what speaks against it; null where nothing known does
 * Source: the handbook's chapter 6.6 (e): a cause must be able to precede its effect.
 */
export function impossibleCause(
  cause: KnownTimes & { readonly defect: string | null },
  effect: KnownTimes,
): ImpossibleCause | null {
  const { absentOn } = cause;
  if (absentOn === null || effect.thereOn === null) return null;
  const between = daysBetween(absentOn.date, effect.thereOn);
  const needs = (cause.defect === null ? undefined : formsInDays.get(cause.defect)) ?? 0;
  if (between >= needs && between >= 0) return null;
  const { date, known } = absentOn;
  return { absentOn: date, known, thereOn: effect.thereOn, formsInDays: between < 0 ? null : needs };
}
