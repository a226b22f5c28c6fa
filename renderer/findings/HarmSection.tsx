import type { StandingLine } from '../../shared-lib/contract/standing.ts';
import { factWords } from '../../shared-lib/judgement/facts.ts';
import { exposureReminders, probabilities } from '../../shared-lib/judgement/probability.ts';
import { safetyStanding } from '../../shared-lib/judgement/risk-matrix.ts';
import { severities } from '../../shared-lib/judgement/severity.ts';
import { type FindingFact, findingFacts, type Probability, type Severity } from '../../shared-lib/model/finding.ts';
import { namedConditionOf } from '../../shared-lib/ranking/named-conditions/index.ts';
import { Choice } from '../ui/Choice.tsx';
import { TextField } from '../ui/TextField.tsx';
import { Toggle } from '../ui/Toggle.tsx';
import styles from './FindingCard.module.css';
import type { SectionProps } from './section.ts';

interface HarmSectionProps extends SectionProps {
  readonly line: StandingLine | undefined;
}

/** Can it hurt somebody: the worst that is believable, and how likely over the hours of this use. Judged by the mechanic alone. */
export function HarmSection({ record, finding, edit, line }: HarmSectionProps) {
  const { safety } = finding;
  const judged = safety !== null && safety !== 'none' ? safety : null;
  const answer = safety === null ? null : safety === 'none' ? 'no' : 'yes';
  const { use } = record.visit;
  const setSeverity = (severity: Severity) => edit({ safety: { severity, probability: judged?.probability ?? 'C' } });
  const setProbability = (probability: Probability) =>
    edit({ safety: { severity: judged?.severity ?? 3, probability } });
  return (
    <section className={styles.section} aria-label="Can it hurt somebody">
      <Choice
        label="Can it hurt somebody?"
        value={answer}
        onChoose={(chosen) =>
          edit({ safety: chosen === 'no' ? 'none' : (judged ?? { severity: 3, probability: 'C' }) })
        }
        options={[
          { value: 'yes', words: 'yes' },
          { value: 'no', words: 'no' },
        ]}
      />
      {judged !== null && (
        <>
          <Choice
            label="The worst that is believable"
            layout="column"
            value={String(judged.severity)}
            onChoose={(value) => setSeverity(Number(value) as Severity)}
            options={severities.map(({ severity, name, sense, examples }) => ({
              value: String(severity),
              words: name,
              note: `${sense} ${examples.join(', ')}`,
            }))}
          />
          <Choice
            label={`How likely in ${use.exposureHours} hours of this use`}
            layout="column"
            value={judged.probability}
            onChoose={setProbability}
            options={probabilities.map(({ probability, name, sense }) => ({
              value: probability,
              words: name,
              note: sense,
            }))}
            hint={`Likelier when it ${exposureReminders.join('; ')}.`}
          />
          <p className={styles.level}>Together: {safetyStanding(judged).level}</p>
        </>
      )}
      {line?.named && (
        <section className={styles.named} aria-label="Do not operate is proposed">
          <p>
            <strong>Do not operate is proposed:</strong> {namedConditionOf(line.named)?.words}.
          </p>
          <TextField
            label="Not followed, because"
            value={finding.namedConditionDeclinedBecause ?? ''}
            onCommit={(text) => edit({ namedConditionDeclinedBecause: text.trim() === '' ? null : text })}
            hint="Left empty, it stands as do not operate."
            maxLength={400}
          />
        </section>
      )}
      <details>
        <summary className={styles.heading}>
          What else counts{finding.facts.length > 0 && ` (${finding.facts.length} said)`}
        </summary>
        {findingFacts.map((fact) => (
          <Toggle
            key={fact}
            label={factWords[fact]}
            on={finding.facts.includes(fact)}
            onChange={(on) => edit({ facts: withFact(finding.facts, fact, on) })}
          />
        ))}
      </details>
    </section>
  );
}

function withFact(facts: readonly FindingFact[], fact: FindingFact, on: boolean): FindingFact[] {
  return on ? [...facts, fact] : facts.filter((other) => other !== fact);
}
