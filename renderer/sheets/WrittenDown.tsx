import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { Reading } from '../../shared-lib/model/reading.ts';
import { sayTyped } from '../../shared-lib/report/reading-words.ts';
import type { Sheet } from '../../shared-lib/sheets/sheet-kind.ts';
import { go } from '../app/place.ts';
import { Button } from '../ui/Button.tsx';
import { capital } from '../ui/words.ts';
import { ReadingWords } from '../visits/ReadingWords.tsx';
import styles from './WrittenDown.module.css';

interface WrittenDownProps {
  readonly record: VisitRecord;
  readonly reading: Reading;
  readonly sheet: Sheet;
}

/** A reading that came as its results; it is shown as it was written and never computed again. */
export function WrittenDown({ record, reading, sheet }: WrittenDownProps) {
  const typed = [sayTyped(reading.inputs), sayTyped(reading.conditions), reading.remark].filter(
    (words) => words !== '',
  );
  const toList = () => go({ name: 'visit', visitId: record.visit.id, page: 'sheets' });
  return (
    <section className={styles.page} aria-label={sheet.name}>
      <h2>{sheet.name}</h2>
      <p className="soft">Taken over as it was written down, without its inputs. It is not computed again.</p>
      <div className={styles.lines}>
        <ReadingWords reading={reading} layout={record.layout.layout} />
      </div>
      {typed.map((words) => (
        <p key={words} className="soft">
          {capital(words)}
        </p>
      ))}
      <p className={styles.actions}>
        <Button
          onPress={() =>
            go({ name: 'visit', visitId: record.visit.id, page: 'sheets', sheet: sheet.id, at: reading.at })
          }
        >
          Measure it again on the sheet
        </Button>
        <Button look="link" onPress={toList}>
          All sheets
        </Button>
      </p>
    </section>
  );
}
