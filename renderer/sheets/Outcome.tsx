import { useState } from 'react';
import type { Reading, TypedLimit } from '../../shared-lib/model/reading.ts';
import type { UnitSystem } from '../../shared-lib/quantities/units.ts';
import { plotOf } from '../../shared-lib/readings/plots/plot-of.ts';
import { isDifference } from '../../shared-lib/readings/result-kind.ts';
import { type SheetOutcome, toResultLines } from '../../shared-lib/sheets/compute.ts';
import type { Sheet } from '../../shared-lib/sheets/sheet-kind.ts';
import { LimitEditor } from './LimitEditor.tsx';
import styles from './Outcome.module.css';
import { ResultRow } from './ResultRow.tsx';
import { SheetPlot } from './SheetPlot.tsx';
import type { SheetPatch } from './use-sheet-draft.ts';

interface OutcomeProps {
  readonly sheet: Sheet;
  readonly outcome: SheetOutcome;
  readonly limits: Readonly<Record<string, TypedLimit>>;
  readonly takenOver: Readonly<Record<string, string>>;
  readonly previous: Reading | null;
  readonly otherwise: NonNullable<Reading['otherwise']> | null;
  readonly system: UnitSystem;
  readonly onSend: (patch: SheetPatch) => void;
}

/** What the sheet says: every result on the scale of its limit, all limits on one line. */
export function Outcome(props: OutcomeProps) {
  const { sheet, outcome, limits, takenOver, previous, otherwise, system, onSend } = props;
  const [edited, setEdited] = useState<string | null>(null);
  if (outcome.notTakenBecause !== null) {
    return (
      <section className={styles.outcome} aria-label="What it says">
        <p className={styles.notTaken}>Not taken: {outcome.notTakenBecause}</p>
        <p className="soft">It stands in the report as not taken, with this reason.</p>
      </section>
    );
  }
  const lines = toResultLines(outcome);
  const plot = plotOf(outcome.picture, system);
  return (
    <section className={styles.outcome} aria-label="What it says">
      <div className={styles.heads} aria-hidden="true">
        <span>result</span>
        <span className={styles.right}>reading</span>
        <span className={styles.limitHead}>limit</span>
        <span>whose limit</span>
        <span>verdict</span>
      </div>
      <ul aria-label={`Results of ${sheet.name.toLowerCase()}`}>
        {outcome.results.map((result, index) => {
          const line = lines[index];
          if (line === undefined) return null;
          const of = result.of;
          return (
            <ResultRow
              key={of}
              result={result}
              line={line}
              before={previous?.results.find((each) => each.of === of) ?? null}
              otherwise={otherwise?.results.find((each) => each.of === of) ?? null}
              system={system}
              isDifference={isDifference(sheet, of)}
              looks={sheet.results[of]?.looksFor === true}
              isEdited={edited === of}
              onEdit={() => setEdited(edited === of ? null : of)}
              editor={
                edited === of && (
                  <LimitEditor
                    of={of}
                    unit={result.unit}
                    limit={limits[of] ?? null}
                    takenOver={takenOver[of] ?? ''}
                    isTakenOver={takenOver[of] !== undefined || result.value === null}
                    looks={sheet.results[of]?.looksFor === true}
                    system={system}
                    onSend={(patch) => {
                      onSend(patch);
                      setEdited(null);
                    }}
                    onClose={() => setEdited(null)}
                  />
                )
              }
            />
          );
        })}
      </ul>
      {lines.some(({ uncertaintyFrom }) => uncertaintyFrom?.includes('usual for such a reading')) && (
        <p className="soft small">
          ± is what is usual for such a reading where no instrument says better; common practice, no source.
        </p>
      )}
      {outcome.voidBecause !== null && (
        <p className={styles.void}>
          <strong>Void:</strong> {outcome.voidBecause}
        </p>
      )}
      {plot !== null && <SheetPlot plot={plot} />}
      {outcome.says.length > 0 && (
        <ul className={styles.says} aria-label="What the numbers point to">
          {outcome.says.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
    </section>
  );
}
