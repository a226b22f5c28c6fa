import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { speakLocation } from '../../shared-lib/parts/speak-location.ts';
import { hoursFields, seriesFields } from '../../shared-lib/readings/series-fields.ts';
import { sheetOf } from '../../shared-lib/sheets/index.ts';
import type { ReadingSeries } from '../../shared-lib/trends/gather-series.ts';
import { wordsOf } from '../api/client.ts';
import { useAnswer } from '../api/queries.ts';
import { useAppState } from '../app/app-state.ts';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { countWords, hoursWords, numberWords } from '../ui/words.ts';
import styles from './GatherSeries.module.css';

interface GatherSeriesProps {
  readonly record: VisitRecord;
  /** Fields of the sheet, filled at one press. */
  readonly onFill: (fields: Readonly<Record<string, string>>) => void;
}

/** What was read on this machine more than once, each a press away from the trend. */
export function GatherSeries({ record, onFill }: GatherSeriesProps) {
  const { shop } = useAppState();
  const { visit, meters } = record;
  const gathered = useAnswer('reading.series', { visitId: visit.id });
  if (gathered.isError) return <ErrorNote {...wordsOf(gathered.error)} />;
  if (gathered.data === undefined) return null;
  const { series, before } = gathered.data;
  if (series.length === 0) return null;
  const fill = (chosen: ReadingSeries) =>
    onFill({
      ...hoursFields({
        meter: visit.meter,
        offsetHours: meters.find(({ id }) => id === visit.meter.meterId)?.offsetHours ?? 0,
        date: visit.date,
        before,
      }),
      ...seriesFields(chosen, shop.units),
    });
  return (
    <section className={styles.gather} aria-label="Gather what was read before">
      <h3>Gather what was read before</h3>
      <ul>
        {series.map((each) => (
          <li key={`${each.sheet} ${each.at} ${each.of} ${each.which ?? ''}`}>
            <button type="button" className={styles.series} onClick={() => fill(each)}>
              <span className={styles.name}>{nameOf(each)}</span>
              <span className={styles.facts}>
                {speakLocation(each.at, record.layout.layout)}: {factsOf(each)}
              </span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

function nameOf({ sheet, of, which }: ReadingSeries): string {
  const name = sheetOf(sheet)?.name ?? sheet;
  return `${name}, ${of}${which === null ? '' : `, number ${which}`}`;
}

function factsOf({ points, ofAnotherPart, withoutHours }: ReadingSeries): string {
  const [first, last] = [points[0], points.at(-1)];
  const span =
    first === undefined || last === undefined
      ? ''
      : first.hours === last.hours
        ? ` at ${hoursWords(first.hours)}`
        : ` from ${numberWords(first.hours)} to ${hoursWords(last.hours)}`;
  return [
    `${countWords(points.length, 'reading')}${span}`,
    ...(ofAnotherPart === 0 ? [] : [`${ofAnotherPart} left out, the part was changed`]),
    ...(withoutHours === 0 ? [] : [`${withoutHours} left out, no hours were read`]),
  ].join('; ');
}
