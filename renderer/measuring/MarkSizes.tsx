import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { growDoubtText } from '../../shared-lib/growing/doubt-words.ts';
import { coverageOf, coverageWords } from '../../shared-lib/measuring/coverage.ts';
import type { MarkSize } from '../../shared-lib/measuring/mark-size.ts';
import { sizeWarnings, sizeWords } from '../../shared-lib/measuring/words.ts';
import type { Finding } from '../../shared-lib/model/finding.ts';
import type { Mark } from '../../shared-lib/model/mark.ts';
import { quantityKind } from '../../shared-lib/quantities/dictionary.ts';
import { doubtText } from '../../shared-lib/tracing/doubt-words.ts';
import { errorSentence } from '../../shared-lib/wording/errors.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { useAppState } from '../app/app-state.ts';
import { Button } from '../ui/Button.tsx';
import { Choice } from '../ui/Choice.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import styles from './MarkSizes.module.css';
import { newestOfEach } from './PlaneList.tsx';
import { type SizeOffer, sizeOffers } from './size-target.ts';

interface MarkSizesProps {
  readonly record: VisitRecord;
  readonly finding: Finding;
  readonly onUse: (quantity: string, markId: string, measure: SizeOffer['measure'] | 'coverage') => void;
}

/** What the finding's marks measure on their photos, each offered to the finding. */
export function MarkSizes({ record, finding, onUse }: MarkSizesProps) {
  const marks = record.marks.filter(({ findingId }) => findingId === finding.id);
  const sized = marks.flatMap((mark) => {
    const size = record.sizes.find(({ markId }) => markId === mark.id);
    return size ? [{ mark, size }] : [];
  });
  if (sized.length === 0) return null;
  return (
    <section aria-label="Measured on the photo">
      {sized.map(({ mark, size }) => (
        <OneMark key={mark.id} record={record} finding={finding} mark={mark} size={size} onUse={onUse} />
      ))}
    </section>
  );
}

interface OneMarkProps extends MarkSizesProps {
  readonly mark: Mark;
  readonly size: MarkSize;
}

const measureWords: Readonly<Record<SizeOffer['measure'], string>> = { size: '', width: 'wide', angle: 'angle' };

function OneMark({ record, finding, mark, size, onUse }: OneMarkProps) {
  const { shop } = useAppState();
  const shot = record.shots.find(({ id }) => id === mark.shotId);
  const plane = record.calibrations.find(({ id }) => id === mark.calibrationId);
  const offers = sizeOffers(size, mark, finding);
  const doubts = mark.origin.by === 'traced' ? (mark.origin.reading?.doubts ?? []) : [];
  const growDoubts = mark.origin.by === 'grown' ? mark.origin.reading.doubts : [];
  const where = `photo ${shot?.sequence ?? ''}`;
  return (
    <div className={styles.mark}>
      {offers.length === 0 && (
        <p className={styles.offer}>
          <span>
            <span className={styles.number}>{sizeWords(size.size, shop.units)}</span>
            <span className={styles.what}>{where}; set its scale with C</span>
          </span>
        </p>
      )}
      {offers.map(({ measure, measurement, quantity }) => {
        const words = sizeWords(measurement, shop.units);
        const label = (quantityKind(quantity)?.label ?? quantity).toLowerCase();
        const isUsed = finding.quantities[quantity]?.typed === words;
        return (
          <div key={measure} className={styles.offer}>
            <span>
              <span className={styles.number}>{words}</span>
              <span className={styles.what}>
                {[measureWords[measure], `${where}, ${plane?.plane ?? ''}`].filter((each) => each !== '').join(', ')}
              </span>
            </span>
            {isUsed ? (
              <span className="soft small">is the {label}</span>
            ) : (
              <Button onPress={() => onUse(quantity, mark.id, measure)} label={`Use ${words} as the ${label}`}>
                Use as {label}
              </Button>
            )}
          </div>
        );
      })}
      <CoverageOfMark record={record} finding={finding} mark={mark} onUse={onUse} />
      {sizeWarnings(size.size).map((warning) => (
        <p key={warning} className={styles.warning}>
          {warning}
        </p>
      ))}
      {size.refused !== null && <p className={styles.warning}>{errorSentence(size.refused).happened}</p>}
      {doubts.length > 0 && (
        <p className={styles.warning}>
          Not sure of the way: {doubts.map(doubtWords).join('; ')}. Look at the dotted stretch, and drag its line where
          it is wrong.
        </p>
      )}
      {growDoubts.length > 0 && (
        <p className={styles.warning}>
          Not sure of the border: {growDoubts.map(growDoubtWords).join('; ')}. Look at the dotted stretch; if it is
          wrong, undo and run a line over the whole patch.
        </p>
      )}
      <PlaneOfMark record={record} mark={mark} />
    </div>
  );
}

/** The share of the area drawn round it that a patch takes up; nothing where none is drawn. */
function CoverageOfMark({ record, finding, mark, onUse }: Omit<OneMarkProps, 'size'>) {
  const shot = record.shots.find(({ id }) => id === mark.shotId);
  const plane = record.calibrations.find(({ id }) => id === mark.calibrationId) ?? null;
  const coverage = shot && coverageOf(mark, record.marks, shot, plane);
  if (!coverage) {
    if (mark.origin.by !== 'grown') return null;
    return <p className="soft small">Draw an area round it to see how much of that it covers.</p>;
  }
  const words = coverageWords(coverage);
  return (
    <div className={styles.offer}>
      <span>
        <span className={styles.number}>{words}</span>
        <span className={styles.what}>of the area drawn round it</span>
      </span>
      {finding.quantities.coverage?.typed === words ? (
        <span className="soft small">is the coverage</span>
      ) : (
        <Button onPress={() => onUse('coverage', mark.id, 'coverage')} label={`Use ${words} as the coverage`}>
          Use as coverage
        </Button>
      )}
    </div>
  );
}

const knownGrowDoubts = ['border-faint', 'reaches-edge', 'no-patch', 'other-extent'] as const;

function growDoubtWords(doubt: string): string {
  const known = knownGrowDoubts.find((each) => each === doubt);
  return known ? growDoubtText(known) : doubt;
}

const knownDoubts = ['gap', 'along-straight-line', 'another-way'] as const;

function doubtWords(doubt: string): string {
  const known = knownDoubts.find((each) => each === doubt);
  return known ? doubtText(known) : doubt;
}

/** Several faces in one photo: which of them the mark lies in is the mechanic's to say. */
function PlaneOfMark({ record, mark }: { readonly record: VisitRecord; readonly mark: Mark }) {
  const change = useChange('mark.change');
  const planes = newestOfEach(record.calibrations.filter(({ shotId }) => shotId === mark.shotId));
  if (planes.length === 0 || (planes.length === 1 && mark.calibrationId !== null)) return null;
  const none = 'none';
  return (
    <>
      <Choice
        label="It lies in"
        value={mark.calibrationId ?? none}
        onChoose={(id) => change.run({ id: mark.id, calibrationId: id === none ? null : id })}
        options={[
          ...planes.map(({ id, plane }) => ({ value: id, words: plane })),
          { value: none, words: 'none of them', note: 'pixels' },
        ]}
      />
      {change.error !== null && <ErrorNote {...wordsOf(change.error)} />}
    </>
  );
}
