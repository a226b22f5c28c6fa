import { type CalledCaution, cautionsForSheet } from '../cautions/cautions-for.ts';
import { cautions } from '../cautions/index.ts';
import { signalWords } from '../cautions/signal-word.ts';
import type { Layout } from '../model/layout.ts';
import type { Sheet } from '../sheets/sheet-kind.ts';

/** What stands before a sheet at the bench: the cautions its place and kind call, and those the sheet itself names. */
export function cautionsBefore(sheet: Sheet, at: string, layout: Layout): readonly CalledCaution[] {
  const called = cautionsForSheet(sheet.id, at, layout);
  const named = cautions
    .filter(({ id, audience }) => sheet.cautions.includes(id) && audience !== 'owner')
    .filter(({ id }) => !called.some(({ caution }) => caution.id === id))
    .map((caution): CalledCaution => ({ caution, because: [] }));
  return [...called, ...named].toSorted(
    (a, b) =>
      signalWords.indexOf(a.caution.word) - signalWords.indexOf(b.caution.word) ||
      a.caution.id.localeCompare(b.caution.id),
  );
}
