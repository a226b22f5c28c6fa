import { useDeferredValue, useEffect, useMemo, useRef, useState } from 'react';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { Reading, TypedLimit } from '../../shared-lib/model/reading.ts';
import { cautionsBefore } from '../../shared-lib/readings/cautions-before.ts';
import { sheetInputOf } from '../../shared-lib/readings/sheet-input.ts';
import { withFieldUnit } from '../../shared-lib/readings/shop-unit.ts';
import { computeSheet } from '../../shared-lib/sheets/compute.ts';
import { hoursAndTrend } from '../../shared-lib/sheets/hours-and-trend/compute.ts';
import type { Sheet } from '../../shared-lib/sheets/sheet-kind.ts';
import { wordsOf } from '../api/client.ts';
import { useAnswer } from '../api/queries.ts';
import { useAppState } from '../app/app-state.ts';
import { CautionList } from '../cautions/CautionList.tsx';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import styles from './FilledSheet.module.css';
import { FindingOffer } from './FindingOffer.tsx';
import { GatherSeries } from './GatherSeries.tsx';
import { isTouched, Keypad } from './Keypad.tsx';
import { Outcome } from './Outcome.tsx';
import { SheetFields } from './SheetFields.tsx';
import { SheetFoot } from './SheetFoot.tsx';
import { SheetHead } from './SheetHead.tsx';
import { fieldsOf, type SheetField } from './sheet-field.ts';
import { useSheetDraft } from './use-sheet-draft.ts';

interface FilledSheetProps {
  readonly record: VisitRecord;
  readonly sheet: Sheet;
  /** Null while nobody has said where it is taken. */
  readonly at: string | null;
  readonly reading: Reading | undefined;
  readonly onPlace: (place: string) => void;
  readonly onBegun: (readingId: string) => void;
}

const noLimits: Readonly<Record<string, TypedLimit>> = {};

/** A sheet while it is filled: what is typed on the left, what it says on the right, at every keystroke. */
export function FilledSheet({ record, sheet, at, reading, onPlace, onBegun }: FilledSheetProps) {
  const { shop } = useAppState();
  const { layout } = record.layout;
  const visitId = record.visit.id;
  const draft = useSheetDraft({ visitId, sheet: sheet.id, at, reading, system: shop.units, onBegun });
  const fields = useMemo(() => fieldsOf(sheet), [sheet]);
  const instruments = useAnswer('instrument.list', {}).data ?? [];
  const remembered = useAnswer('limit.remembered', { visitId, sheet: sheet.id }).data ?? noLimits;
  const previous = useAnswer(
    'reading.previous',
    { visitId, sheet: sheet.id, at: at ?? '' },
    { when: at !== null },
  ).data;
  const resolution = instruments.find(({ id }) => id === reading?.instrumentId)?.resolution ?? null;
  const limits = reading === undefined ? remembered : (reading.limits ?? noLimits);

  // A surface of many points takes longer than a keystroke; the field never waits for it.
  const typedNow = useDeferredValue(JSON.stringify(draft.now));
  const outcome = useMemo(() => {
    const now = JSON.parse(typedNow) as typeof draft.now;
    const asKept = (kept: 'inputs' | 'conditions') =>
      Object.fromEntries(
        Object.entries(now[kept]).map(([id, text]) => {
          const spec = sheet[kept][id];
          return [id, spec === undefined ? text : withFieldUnit(text.trim(), spec, shop.units)];
        }),
      );
    const asked = {
      at: at ?? '',
      inputs: asKept('inputs'),
      conditions: asKept('conditions'),
      limits,
      notTakenBecause: reading?.notTakenBecause ?? null,
      ...(reading?.takenOver === undefined ? {} : { takenOver: reading.takenOver }),
    };
    const around = { conditions: record.visit.conditions, volts: layout.volts, resolution };
    return computeSheet(sheet, sheetInputOf(asked, around));
  }, [typedNow, sheet, shop.units, at, limits, reading, record.visit.conditions, layout.volts, resolution]);

  const called = useMemo(() => (at === null ? [] : cautionsBefore(sheet, at, layout)), [sheet, at, layout]);
  const [inHand, setInHand] = useState<SheetField | null>(null);
  const [hasKeys, setKeys] = useState(isTouched);
  const isFilled = at !== null && reading?.notTakenBecause == null;
  const first = useRef<HTMLDivElement>(null);
  const hasPlace = at !== null;
  useEffect(() => {
    // The cautions stand before the sheet, so the page stays at its top while the hand is already in the first field.
    if (hasPlace) first.current?.querySelector<HTMLElement>('input, textarea')?.focus({ preventScroll: true });
  }, [hasPlace]);

  return (
    <div className={styles.desk}>
      <article className={styles.page} aria-label={sheet.name}>
        <SheetHead
          record={record}
          sheet={sheet}
          at={at}
          verdict={outcome.verdict}
          onPlace={(place) => {
            if (reading === undefined) onPlace(place);
            else draft.send({ at: place });
          }}
        />
        <CautionList cautions={called} />
        {draft.error !== null && <ErrorNote {...wordsOf(draft.error)} />}
        {at !== null && (
          <div className={styles.columns}>
            <div ref={first} className={styles.typed}>
              {sheet.id === hoursAndTrend.id && reading?.notTakenBecause == null && (
                <GatherSeries record={record} onFill={(inputs) => draft.send({ inputs })} />
              )}
              {isFilled && (
                <SheetFields
                  fields={fields}
                  draft={draft}
                  problems={outcome.problems}
                  previous={previous ?? null}
                  record={record}
                  inHand={inHand}
                  onInHand={setInHand}
                />
              )}
              {isFilled && !hasKeys && (
                <Button look="link" onPress={() => setKeys(true)}>
                  Number keys on the screen
                </Button>
              )}
              <SheetFoot record={record} reading={reading} instruments={instruments} onSend={draft.send} />
            </div>
            <div className={styles.says}>
              <Outcome
                sheet={sheet}
                outcome={outcome}
                limits={limits}
                takenOver={reading?.takenOver ?? {}}
                previous={previous?.reading ?? null}
                otherwise={reading?.otherwise ?? null}
                system={shop.units}
                onSend={draft.send}
              />
              {reading !== undefined && <FindingOffer record={record} reading={reading} outcome={outcome} />}
            </div>
          </div>
        )}
      </article>
      {isFilled && hasKeys && (
        <Keypad
          field={inHand}
          text={inHand === null ? '' : draft.textOf(inHand)}
          system={shop.units}
          onClose={() => setKeys(false)}
        />
      )}
    </div>
  );
}
