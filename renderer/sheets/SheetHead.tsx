import { useState } from 'react';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { Verdict } from '../../shared-lib/model/reading.ts';
import { speakLocation } from '../../shared-lib/parts/speak-location.ts';
import type { Sheet } from '../../shared-lib/sheets/sheet-kind.ts';
import { go } from '../app/place.ts';
import { PlacePicker } from '../findings/PlacePicker.tsx';
import { Button } from '../ui/Button.tsx';
import styles from './SheetHead.module.css';
import { VerdictMark } from './VerdictMark.tsx';

interface SheetHeadProps {
  readonly record: VisitRecord;
  readonly sheet: Sheet;
  readonly at: string | null;
  readonly verdict: Verdict;
  readonly onPlace: (place: string) => void;
}

/** What is measured, where, and what it comes to. */
export function SheetHead({ record, sheet, at, verdict, onPlace }: SheetHeadProps) {
  const [isPicking, setPicking] = useState(at === null);
  const { layout } = record.layout;
  const toList = () => go({ name: 'visit', visitId: record.visit.id, page: 'sheets' });
  return (
    <header className={styles.head}>
      <div className={styles.line}>
        <h2 className={styles.name}>{sheet.name}</h2>
        {at !== null && (
          <span className={styles.place}>
            {speakLocation(at, layout)}
            <Button look="link" onPress={() => setPicking(!isPicking)} expanded={isPicking} label="Change where">
              Change
            </Button>
          </span>
        )}
        <span className={styles.end}>
          <output aria-label="Verdict of the sheet">
            <VerdictMark verdict={verdict} />
          </output>
          <Button look="link" onPress={toList}>
            All sheets
          </Button>
        </span>
      </div>
      <p className={styles.about}>{sheet.about}</p>
      {isPicking && (
        <div className={styles.picker}>
          <PlacePicker
            layout={layout}
            onPick={(place) => {
              setPicking(false);
              onPlace(place);
            }}
            onClose={() => (at === null ? toList() : setPicking(false))}
          />
        </div>
      )}
    </header>
  );
}
