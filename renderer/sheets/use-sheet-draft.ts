import { useEffect, useRef, useState } from 'react';
import type { InputOf } from '../../shared-lib/contract/operations.ts';
import type { Reading } from '../../shared-lib/model/reading.ts';
import type { UnitSystem } from '../../shared-lib/quantities/units.ts';
import { withFieldUnit } from '../../shared-lib/readings/shop-unit.ts';
import type { CallError } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import type { SheetField } from './sheet-field.ts';

export type SheetPatch = Omit<InputOf<'reading.change'>, 'id'>;

interface SheetDraftOptions {
  readonly visitId: string;
  readonly sheet: string;
  readonly at: string | null;
  readonly reading: Reading | undefined;
  readonly system: UnitSystem;
  readonly onBegun: (readingId: string) => void;
}

export interface SheetDraft {
  /** What stands in a field: what is being typed, else what is kept. */
  readonly textOf: (field: SheetField) => string;
  readonly isKept: (field: SheetField) => boolean;
  readonly type: (field: SheetField, text: string) => void;
  /** Keeps what was typed, on leaving the field. */
  readonly commit: (field: SheetField, text?: string) => void;
  /** Anything else of the reading. */
  readonly send: (patch: SheetPatch) => void;
  /** Every field as it would be kept now, for what the sheet says while one types. */
  readonly now: Pick<Reading, 'inputs' | 'conditions'>;
  readonly error: CallError | null;
}

type Texts = Readonly<Record<string, string>>;

/** A field on its way to the record: as it was typed, and as it will be kept. */
interface UnderWay {
  readonly key: string;
  readonly typed: string;
  readonly kept: string;
}

const keyOf = ({ kept, id }: SheetField): string => `${kept} ${id}`;

const storedTexts = (reading: Reading | undefined): Texts => ({
  ...Object.fromEntries(Object.entries(reading?.inputs ?? {}).map(([id, text]) => [`inputs ${id}`, text])),
  ...Object.fromEntries(Object.entries(reading?.conditions ?? {}).map(([id, text]) => [`conditions ${id}`, text])),
});

const without = (texts: Texts, gone: (key: string) => boolean): Texts =>
  Object.fromEntries(Object.entries(texts).filter(([key]) => !gone(key)));

/**
 * The fields of a sheet while they are typed. Each field is kept when it is left, one after the other; the first one begins
 * the reading. What is typed outlives a refusal and gives way when the record's own value changes,
 * unless that is only an earlier saving of the same field.
 */
export function useSheetDraft(options: SheetDraftOptions): SheetDraft {
  const { visitId, sheet, at, reading, system, onBegun } = options;
  const fill = useChange('reading.fill');
  const change = useChange('reading.change');
  const [typed, setTyped] = useState<Texts>({});
  const stored = storedTexts(reading);
  const [seen, setSeen] = useState(stored);
  const [underWay, setUnderWay] = useState<readonly UnderWay[]>([]);
  if (JSON.stringify(stored) !== JSON.stringify(seen)) {
    setSeen(stored);
    const arrived = underWay.filter(({ key, kept }) => stored[key] === kept && stored[key] !== seen[key]);
    setUnderWay(underWay.filter((each) => !arrived.includes(each)));
    // What was sent earlier may arrive while something newer is typed; the newer stays.
    const isNewer = (key: string) => {
      const sentBefore = arrived.filter((each) => each.key === key);
      return sentBefore.length > 0 && sentBefore.every((each) => each.typed !== typed[key]);
    };
    setTyped((texts) => without(texts, (key) => stored[key] !== seen[key] && !isNewer(key)));
  }

  const sent = useRef(new Map<string, string>());
  const queue = useRef(Promise.resolve<string | null>(reading?.id ?? null));
  const known = useRef<string | null>(reading?.id ?? null);
  const readingId = reading?.id ?? null;
  useEffect(() => {
    // Taken back and brought back by undo: what is typed next begins a reading anew, or goes on with it.
    if (known.current !== readingId) queue.current = queue.current.then(() => readingId);
    known.current = readingId;
    sent.current.clear();
  }, [readingId]);

  const send = (patch: SheetPatch) => {
    if (at === null && readingId === null && patch.at === undefined) return;
    queue.current = queue.current.then(async (id) => {
      try {
        if (id !== null) {
          await change.runOrThrow({ id, ...patch });
          return id;
        }
        const begun = await fill.runOrThrow({ visitId, sheet, ...patch, at: patch.at ?? at ?? '' });
        known.current = begun.id;
        onBegun(begun.id);
        return begun.id;
      } catch {
        // The refusal stands in `error` and what was typed stays in its field.
        return id;
      }
    });
  };

  const asKept = (field: SheetField, text: string) => withFieldUnit(text.trim(), field.spec, system);
  const textOf = (field: SheetField) => typed[keyOf(field)] ?? stored[keyOf(field)] ?? '';
  const commit = (field: SheetField, given?: string) => {
    const text = given ?? typed[keyOf(field)];
    if (text === undefined) return;
    const key = keyOf(field);
    const kept = asKept(field, text);
    const isUnderWay = underWay.some((each) => each.key === key);
    if (kept === (stored[key] ?? '') && !isUnderWay) {
      setTyped((texts) => without(texts, (each) => each === key));
      return;
    }
    if (sent.current.get(key) === kept) return;
    sent.current.set(key, kept);
    setUnderWay((before) => [
      ...before.filter((each) => each.key !== key || each.kept !== kept),
      { key, typed: text, kept },
    ]);
    send({ [field.kept]: { [field.id]: kept } });
  };

  const texts = { ...stored, ...typed };
  const gathered = (where: SheetField['kept']): Record<string, string> =>
    Object.fromEntries(
      Object.entries(texts).flatMap(([key, text]) => {
        const [kept, ...id] = key.split(' ');
        return kept === where ? [[id.join(' '), text]] : [];
      }),
    );
  return {
    textOf,
    isKept: (field) => typed[keyOf(field)] === undefined || typed[keyOf(field)] === stored[keyOf(field)],
    type: (field, text) => {
      sent.current.delete(keyOf(field));
      setTyped((before) => ({ ...before, [keyOf(field)]: text }));
    },
    commit: (field, text) => {
      if (text !== undefined) setTyped((before) => ({ ...before, [keyOf(field)]: text }));
      commit(field, text);
    },
    send,
    now: { inputs: gathered('inputs'), conditions: gathered('conditions') },
    error: change.error ?? fill.error,
  };
}
