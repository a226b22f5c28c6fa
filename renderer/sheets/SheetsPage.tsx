import { useState } from 'react';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { usualPlace } from '../../shared-lib/readings/sheet-places.ts';
import { sheetOf } from '../../shared-lib/sheets/index.ts';
import { replacePlace } from '../app/place.ts';
import { FilledSheet } from './FilledSheet.tsx';
import { SheetList } from './SheetList.tsx';
import { WrittenDown } from './WrittenDown.tsx';

/** What lies open on the sheets page. */
export interface OpenSheet {
  readonly id: string | undefined;
  readonly at: string | undefined;
  readonly readingId: string | undefined;
}

interface SheetsPageProps {
  readonly record: VisitRecord;
  readonly open: OpenSheet;
}

/** The list of sheets, or the one that lies open. */
export function SheetsPage({ record, open }: SheetsPageProps) {
  // A sheet that becomes a reading while it is being filled stays the same sheet on the screen.
  const [begun, setBegun] = useState<{ readonly key: string; readonly readingId: string } | null>(null);
  const reading = record.readings.find(({ id }) => id === open.readingId);
  const sheet = sheetOf(reading?.sheet ?? open.id ?? '');
  if (sheet === null) return <SheetList record={record} />;
  if (reading?.sheetVersion === 0) return <WrittenDown record={record} reading={reading} sheet={sheet} />;

  const { layout } = record.layout;
  const at = reading?.at ?? open.at ?? usualPlace(sheet, layout);
  const ownKey = open.readingId ?? `new ${sheet.id}`;
  const key = begun !== null && begun.readingId === open.readingId ? begun.key : ownKey;
  const visitId = record.visit.id;
  return (
    <FilledSheet
      key={key}
      record={record}
      sheet={sheet}
      at={at}
      reading={reading}
      onPlace={(place) => replacePlace({ name: 'visit', visitId, page: 'sheets', sheet: sheet.id, at: place })}
      onBegun={(readingId) => {
        setBegun({ key, readingId });
        // The place is named until the record has the reading, which knows it.
        replacePlace(
          { name: 'visit', visitId, page: 'sheets', sheet: sheet.id, at: at ?? undefined, readingId },
          // Whoever has gone on meanwhile is not fetched back.
          (here) => here.name === 'visit' && here.visitId === visitId && here.sheet === sheet.id,
        );
      }}
    />
  );
}
