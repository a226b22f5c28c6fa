import type { StandingLine } from '../../shared-lib/contract/standing.ts';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { defectOf } from '../../shared-lib/defects/index.ts';
import { stateWords } from '../../shared-lib/judgement/states.ts';
import { tierWords } from '../../shared-lib/judgement/tiers.ts';
import { methodOf } from '../../shared-lib/methods/index.ts';
import type { Finding } from '../../shared-lib/model/finding.ts';
import { TagPlate } from '../stage/shapes/tag/TagPlate.tsx';
import { classNames } from '../ui/class-names.ts';
import { Icon } from '../ui/Icon.tsx';
import painted from '../ui/painted.module.css';
import styles from './FindingHead.module.css';

interface FindingHeadProps {
  readonly record: VisitRecord;
  readonly finding: Finding;
  readonly line: StandingLine | undefined;
  readonly onClose: () => void;
}

const ordinal = (place: number): string => {
  const tens = place % 100;
  const suffix = tens >= 11 && tens <= 13 ? 'th' : (['th', 'st', 'nd', 'rd'][place % 10] ?? 'th');
  return `${place}${suffix}`;
};

/** What is in hand: tag, name, how sure, and where it stands. */
export function FindingHead({ record, finding, line, onClose }: FindingHeadProps) {
  const name =
    finding.kind === 'observation' ? 'Observation' : (defectOf(finding.defect)?.name ?? 'Not said what it is');
  const by = finding.methods.map((code) => methodOf(code).name.toLowerCase());
  const sure =
    finding.kind === 'observation'
      ? ''
      : [stateWords(line?.state ?? finding.state).label.toLowerCase(), ...by].join(', ');
  return (
    <header className={classNames(styles.head, painted.painted)}>
      <span className={styles.tag}>
        <TagPlate
          number={finding.number}
          tier={line?.tier ?? 4}
          state={line?.state ?? finding.state}
          height={38}
          ground="painted"
        />
      </span>
      <div className={styles.words}>
        <h2>{name}</h2>
        <p className="soft">{sure}</p>
        {line !== undefined && (
          <p className={styles.place}>
            {tierWords(line.tier).heading}, {ordinal(line.place)} of {record.standing.lines.length}. {line.why}
          </p>
        )}
      </div>
      <button type="button" className={styles.close} onClick={onClose} aria-label={`Close finding ${finding.number}`}>
        <Icon name="close" />
      </button>
    </header>
  );
}
