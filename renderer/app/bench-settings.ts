import { createStore, useStore } from '../api/store.ts';

export const themes = ['bench', 'sunlight', 'night'] as const;
export type Theme = (typeof themes)[number];
export const sizes = ['desk', 'bench'] as const;
export type Size = (typeof sizes)[number];

/** How this window is looked at: of this screen, not of the record. */
export interface BenchSettings {
  readonly theme: Theme;
  readonly size: Size;
  /** From a rule held to the screen; null until someone has done so. */
  readonly pixelsPerMm: number | null;
}

const shelf = 'witness-mark.bench';
const usual: BenchSettings = { theme: 'bench', size: 'desk', pixelsPerMm: null };

/** What was kept last time, piece by piece; anything that can't be read is as usual. */
export function readSettings(kept: string | null): BenchSettings {
  if (kept === null) return usual;
  let found: unknown;
  try {
    found = JSON.parse(kept);
  } catch {
    return usual;
  }
  if (typeof found !== 'object' || found === null) return usual;
  const theme = themes.find((name) => name === Reflect.get(found, 'theme'));
  const size = sizes.find((name) => name === Reflect.get(found, 'size'));
  const pixelsPerMm: unknown = Reflect.get(found, 'pixelsPerMm');
  const isPlausible = typeof pixelsPerMm === 'number' && pixelsPerMm >= 1 && pixelsPerMm <= 20;
  return { theme: theme ?? usual.theme, size: size ?? usual.size, pixelsPerMm: isPlausible ? pixelsPerMm : null };
}

const benchTargetMm = 15;
const fewestTargetPixels = 52;

/** Height of a target in the bench size, from the screen's own pixels where they are known. */
export function benchTargetPixels(pixelsPerMm: number | null): number {
  return pixelsPerMm === null ? 60 : Math.max(fewestTargetPixels, Math.round(pixelsPerMm * benchTargetMm));
}

const settings = createStore<BenchSettings>(usual);

function apply(now: BenchSettings): void {
  const { dataset, style } = document.documentElement;
  dataset.theme = now.theme;
  dataset.size = now.size;
  style.setProperty('--target-bench', `${benchTargetPixels(now.pixelsPerMm)}px`);
}

/** Takes up the settings of last time. */
export function startBenchSettings(): void {
  settings.set(readSettings(localStorage.getItem(shelf)));
  apply(settings.get());
}

export function changeBenchSettings(change: Partial<BenchSettings>): void {
  settings.set((now) => ({ ...now, ...change }));
  apply(settings.get());
  localStorage.setItem(shelf, JSON.stringify(settings.get()));
}

export function useBenchSettings(): BenchSettings {
  return useStore(settings);
}

/** The one after this, round and round. */
export function nextOf<T>(list: readonly T[], now: T): T {
  return list[(list.indexOf(now) + 1) % list.length] ?? now;
}
