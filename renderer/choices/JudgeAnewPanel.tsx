import type { ChoiceDisposition, JudgedAfter } from '../../shared-lib/choices/records.ts';
import { dispositionWords } from '../../shared-lib/choices/words.ts';
import type { ChoiceView } from '../../shared-lib/contract/choices.ts';
import { probabilities } from '../../shared-lib/judgement/probability.ts';
import { safetyStanding } from '../../shared-lib/judgement/risk-matrix.ts';
import { severities } from '../../shared-lib/judgement/severity.ts';
import { urgencies } from '../../shared-lib/judgement/urgency.ts';
import type { Finding, Probability, Safety, Severity, Urgency } from '../../shared-lib/model/finding.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { Choice } from '../ui/Choice.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { Panel } from '../ui/Panel.tsx';
import { TextField } from '../ui/TextField.tsx';
import styles from './ChoicePanel.module.css';

interface JudgeAnewPanelProps {
  readonly choice: ChoiceView;
  readonly finding: Finding;
  readonly disposition: ChoiceDisposition;
  readonly onClose: () => void;
}

const asItWas = { value: 'as-it-was', words: 'as it was judged' } as const;

/** How a finding stands after a choice that does not mend it whole: judged anew by the mechanic, and why. */
export function JudgeAnewPanel({ choice, finding, disposition, onClose }: JudgeAnewPanelProps) {
  const dispose = useChange('choice.dispose');
  const { is, why } = disposition;
  const after = disposition.after ?? {};
  const keep = (next: JudgedAfter, because = why) =>
    dispose.run({
      id: choice.id,
      findingId: finding.id,
      is,
      after: Object.values(next).every((value) => value === undefined) ? null : next,
      why: because,
    });
  const without = (name: keyof JudgedAfter): JudgedAfter => {
    const { [name]: _, ...rest } = after;
    return rest;
  };
  const safety = after.safety;
  const judged: Safety | null = safety !== undefined && safety !== 'none' ? safety : null;
  const start: Safety =
    judged ??
    (finding.safety !== null && finding.safety !== 'none' ? finding.safety : { severity: 3, probability: 'C' });
  return (
    <Panel title={`Finding ${finding.number} after “${choice.name}”`} onClose={onClose}>
      <p>
        It is {dispositionWords[is]}. What you judge anew here is ranked again; what you leave stays as it was judged.
      </p>
      <Choice
        label="Can it hurt somebody then?"
        value={safety === undefined ? asItWas.value : safety === 'none' ? 'no' : 'yes'}
        onChoose={(value) =>
          keep(
            value === 'yes'
              ? { ...after, safety: start }
              : value === 'no'
                ? { ...after, safety: 'none' }
                : without('safety'),
          )
        }
        options={[asItWas, { value: 'yes', words: 'yes' }, { value: 'no', words: 'no' }]}
      />
      {judged !== null && (
        <>
          <Choice
            label="The worst that is believable"
            layout="column"
            value={String(judged.severity)}
            onChoose={(value) => keep({ ...after, safety: { ...judged, severity: Number(value) as Severity } })}
            options={severities.map(({ severity, name, sense }) => ({
              value: String(severity),
              words: name,
              note: sense,
            }))}
          />
          <Choice
            label="How likely then"
            layout="column"
            value={judged.probability}
            onChoose={(value) => keep({ ...after, safety: { ...judged, probability: value as Probability } })}
            // Eliminated is only what is mended: a sign, a warning or a part repair never earns it.
            options={probabilities
              .filter(({ probability }) => probability !== 'F')
              .map(({ probability, name, sense }) => ({ value: probability, words: name, note: sense }))}
          />
          <p className={styles.total}>Together: {safetyStanding(judged).level}</p>
        </>
      )}
      <Choice
        label="How soon it matters then"
        value={after.urgency === undefined ? asItWas.value : String(after.urgency)}
        onChoose={(value) =>
          keep(value === asItWas.value ? without('urgency') : { ...after, urgency: Number(value) as Urgency })
        }
        options={[asItWas, ...urgencies.map(({ urgency, label }) => ({ value: String(urgency), words: label }))]}
      />
      <Choice
        label="Does running make it worse then?"
        value={after.runWorse === undefined ? asItWas.value : after.runWorse ? 'yes' : 'no'}
        onChoose={(value) =>
          keep(value === asItWas.value ? without('runWorse') : { ...after, runWorse: value === 'yes' })
        }
        options={[asItWas, { value: 'yes', words: 'yes' }, { value: 'no', words: 'no' }]}
      />
      <TextField
        label="Why"
        value={why}
        onCommit={(text) => keep(after, text.trim())}
        lines="many"
        maxLength={400}
        hint="It prints beside the new judgement."
      />
      {dispose.error !== null && <ErrorNote {...wordsOf(dispose.error)} />}
    </Panel>
  );
}
