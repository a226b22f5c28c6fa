import { isTold, writtenChange, writtenOtherwise } from '../../shared-lib/comparison/changes-since.ts';
import {
  bothSizes,
  gapsOf,
  growthCaution,
  growthWarnings,
  growthWords,
} from '../../shared-lib/comparison/growth-words.ts';
import type { ThenAndNow } from '../../shared-lib/contract/comparisons.ts';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { useAppState } from '../app/app-state.ts';
import { TagPlate } from '../stage/shapes/tag/TagPlate.tsx';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { hoursWords } from '../ui/words.ts';
import styles from './ComparePanel.module.css';

interface GrowthLinesProps {
  readonly record: VisitRecord;
  readonly seen: ThenAndNow;
  readonly onToPhoto: (at: { visitId: string; shotId: string }) => void;
}

/** What became of each finding that goes on: grown, no change that can be told, or what is missing to say. */
export function GrowthLines({ record, seen, onToPhoto }: GrowthLinesProps) {
  const { shop } = useAppState();
  const change = useChange('finding.change');
  const setAnew = useChange('mark.change');
  const error = change.error ?? setAnew.error;
  if (seen.growth.length === 0) return null;
  const { earlier } = seen;
  return (
    <section className={styles.section} aria-label="What became of it">
      <h3>What became of it</h3>
      {seen.growth.map((growth) => {
        const finding = record.findings.find(({ id }) => id === growth.findingId);
        const line = record.standing.lines.find(({ findingId }) => findingId === growth.findingId);
        if (!finding) return null;
        const words = growthWords(growth, shop.units);
        const written = isTold(growth) ? null : writtenChange(growth, earlier, record.before?.old ?? []);
        const otherwise = writtenOtherwise(growth, finding, shop.units);
        const hours = growth.hoursThen === null || growth.hoursNow === null ? null : growth.hoursNow - growth.hoursThen;
        const marked = growth.missing.includes('no-scale-now')
          ? record.marks.find(({ id }) => id === growth.markId)
          : null;
        const unset = growth.missing.includes('only-carried')
          ? record.marks.find(({ id }) => id === growth.markId)
          : undefined;
        const unsetOrigin = unset?.origin.by === 'carried' ? unset.origin : null;
        return (
          <div key={growth.findingId} className={styles.growth}>
            <p className={styles.title}>
              <TagPlate number={finding.number} tier={line?.tier ?? 4} state={line?.state ?? finding.state} />
              <span>{line?.title ?? ''}</span>
            </p>
            {written === null && words !== '' && <p className={styles.told}>{words}</p>}
            {written === null && words !== '' && (
              <p className="soft">
                {bothSizes(growth, shop.units)}
                {hours === null ? '. Hours between are not known.' : `, ${hoursWords(hours)} between.`}
              </p>
            )}
            {written !== null && (
              <>
                <p className={styles.told}>{written.words}</p>
                <p className="soft">As it was written down at both visits.</p>
              </>
            )}
            {otherwise !== '' && <p>{otherwise}</p>}
            {growthWarnings(growth).map((warning) => (
              <p key={warning}>{warning}</p>
            ))}
            {growthCaution(growth) !== '' && <p className="soft">{growthCaution(growth)}</p>}
            {growth.growth?.state === 'grown' && !finding.facts.includes('growth-shown') && (
              <Button
                look="link"
                onPress={() => change.run({ id: finding.id, facts: [...finding.facts, 'growth-shown'] })}
              >
                Note it on finding {finding.number}: it has been shown to grow
              </Button>
            )}
            {gapsOf(growth).map((gap) => (
              <p key={gap}>{gap}</p>
            ))}
            {unset && unsetOrigin && (
              <Button
                look="link"
                onPress={() => setAnew.run({ id: unset.id, origin: { ...unsetOrigin, isSetAnew: true } })}
              >
                It is as it was: the mark is right
              </Button>
            )}
            {growth.missing.includes('no-scale-then') && (
              <Button look="link" onPress={() => onToPhoto({ visitId: earlier.visitId, shotId: earlier.shot.id })}>
                To the earlier photo
              </Button>
            )}
            {marked && (
              <Button look="link" onPress={() => onToPhoto({ visitId: record.visit.id, shotId: marked.shotId })}>
                To today's photo
              </Button>
            )}
          </div>
        );
      })}
      {error !== null && <ErrorNote {...wordsOf(error)} />}
    </section>
  );
}
