import type { StandingLine } from '../../shared-lib/contract/standing.ts';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { tierWords } from '../../shared-lib/judgement/tiers.ts';
import { useChange } from '../api/queries.ts';
import { TagPlate } from '../stage/shapes/tag/TagPlate.tsx';
import { Button } from '../ui/Button.tsx';
import { LadderRule } from '../ui/LadderRule.tsx';
import styles from './StandingPane.module.css';

/** At the start of a visit nearly all is unanswered; the list must not bury the findings. */
const mostUnanswered = 4;

interface StandingPaneProps {
  readonly record: VisitRecord;
  readonly onFinding: (findingId: string) => void;
}

/** The ranked list, always beside the work, each line saying why it stands there. */
export function StandingPane({ record, onFinding }: StandingPaneProps) {
  const { lines, notLookedAt, unranked, coverage } = record.standing;
  const add = useChange('finding.add');
  const answered = notLookedAt.filter(({ because }) => because !== null);
  const unanswered = notLookedAt.filter(({ because }) => because === null);
  const tiers = [...new Set(lines.map(({ tier }) => tier))];
  const agreed = coverage.examined + coverage.notExamined + coverage.notApplicable;
  return (
    <aside className={styles.pane} aria-label="Standing">
      <header className={styles.head}>
        <h2>Standing</h2>
        <span className="soft">
          {lines.length} ranked{notLookedAt.length > 0 && `, ${notLookedAt.length} not looked at`}
        </span>
      </header>
      {lines.length === 0 && (
        <p className={styles.empty}>
          Findings stand here, the most pressing first, each with why. The first one may come from a photo, or from
          here.
        </p>
      )}
      {tiers.map((tier) => (
        <section key={tier} aria-label={tierWords(tier).heading}>
          <LadderRule rung={tier} word={tierWords(tier).heading} />
          <ul>
            {lines
              .filter((line) => line.tier === tier)
              .map((line) => (
                <Line key={line.findingId} line={line} onFinding={onFinding} />
              ))}
          </ul>
        </section>
      ))}
      {notLookedAt.length > 0 && (
        <section aria-label="Not looked at">
          <LadderRule rung="not-looked-at" word="Not looked at" />
          <ul className={styles.plain}>
            {answered.map(({ path, spoken, because }) => (
              <li key={path}>
                {spoken}: {because}
              </li>
            ))}
            {unanswered.slice(0, mostUnanswered).map(({ path, spoken }) => (
              <li key={path}>{spoken}: no reason given yet</li>
            ))}
            {unanswered.length > mostUnanswered && (
              <li>and {unanswered.length - mostUnanswered} more agreed items, no reason given yet</li>
            )}
          </ul>
        </section>
      )}
      {unranked.length > 0 && (
        <section aria-label="Listed, not ranked">
          <LadderRule rung="not-looked-at" word="Listed, not ranked" />
          <ul>
            {unranked.map(({ findingId, number, title, state }) => (
              <li key={findingId} className={styles.line}>
                <button type="button" className={styles.open} onClick={() => onFinding(findingId)}>
                  {state === 'observation' ? (
                    <span className={styles.noTag} />
                  ) : (
                    <TagPlate number={number} tier={4} state="none-found" />
                  )}
                  <span>
                    {title}
                    <span className={`${styles.why} soft`}>
                      {state === 'observation' ? 'observation' : 'examined, none found'}
                    </span>
                  </span>
                </button>
              </li>
            ))}
          </ul>
        </section>
      )}
      {agreed > 0 && (
        <p className={`${styles.coverage} soft`}>
          Of {agreed} agreed items {coverage.examined} examined, {coverage.notExamined} not
          {coverage.notApplicable > 0 && `, ${coverage.notApplicable} do not apply`}.
        </p>
      )}
      <div className={styles.foot}>
        <Button
          onPress={() => add.run({ visitId: record.visit.id }, (finding) => onFinding(finding.id))}
          disabled={add.isRunning}
        >
          Write a finding
        </Button>
      </div>
    </aside>
  );
}

function Line({ line, onFinding }: { readonly line: StandingLine; readonly onFinding: (id: string) => void }) {
  return (
    <li className={styles.line}>
      <button type="button" className={styles.open} onClick={() => onFinding(line.findingId)}>
        <TagPlate number={line.number} tier={line.tier} state={line.state} label={`Finding ${line.number}:`} />
        <span>
          <span className={styles.title}>{line.title}</span>
          <span className={`${styles.why} soft`}>
            {line.why}
            {line.movedBecause !== null && ` Moved from place ${line.computedPlace}: ${line.movedBecause}.`}
          </span>
          {line.missing.length > 0 && (
            <span className={styles.missing}>
              {line.missing.length === 1 ? 'Still missing: ' : `Still missing ${line.missing.length}: `}
              {line.missing[0]}
              {line.missing.length > 1 && ' ...'}
            </span>
          )}
        </span>
      </button>
    </li>
  );
}
