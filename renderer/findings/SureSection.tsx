import { defectOf } from '../../shared-lib/defects/index.ts';
import { states } from '../../shared-lib/judgement/states.ts';
import { methodOf, methods } from '../../shared-lib/methods/index.ts';
import { notFoundSentence } from '../../shared-lib/methods/not-found.ts';
import type { MethodCode } from '../../shared-lib/model/finding.ts';
import { notExaminedReasons } from '../../shared-lib/notebook/gaps.ts';
import { Button } from '../ui/Button.tsx';
import { Choice } from '../ui/Choice.tsx';
import { TextField } from '../ui/TextField.tsx';
import styles from './FindingCard.module.css';
import type { SectionProps } from './section.ts';

/** How sure, and by what method: each says what it cannot see. */
export function SureSection({ finding, edit }: SectionProps) {
  const defect = defectOf(finding.defect);
  const confirming = defect?.confirmedBy ?? [];
  const offered = [...methods].sort(
    (a, b) => Number(confirming.includes(b.code)) - Number(confirming.includes(a.code)),
  );
  const toggle = (code: MethodCode) =>
    edit({
      methods: finding.methods.includes(code)
        ? finding.methods.filter((other) => other !== code)
        : [...finding.methods, code],
    });
  return (
    <section className={styles.section} aria-label="How sure">
      <Choice
        label="How sure"
        value={finding.state}
        onChoose={(state) => edit({ state })}
        options={states.map(({ state, label }, index) => ({ value: state, words: label, keyCap: String(index + 1) }))}
      />
      {finding.state === 'not-examined' ? (
        <>
          <fieldset className={styles.row} aria-label="Why not">
            {notExaminedReasons.map((reason) => (
              <Button
                key={reason}
                pressed={finding.notExaminedBecause === reason}
                onPress={() => edit({ notExaminedBecause: reason })}
              >
                {reason}
              </Button>
            ))}
          </fieldset>
          <TextField
            label="Why it was not examined"
            value={finding.notExaminedBecause ?? ''}
            onCommit={(text) => edit({ notExaminedBecause: text.trim() === '' ? null : text })}
            maxLength={400}
          />
        </>
      ) : (
        <>
          <fieldset className={styles.row} aria-label="Looked at by">
            {offered.map(({ code, name }) => (
              <Button key={code} pressed={finding.methods.includes(code)} onPress={() => toggle(code)}>
                {name}
              </Button>
            ))}
          </fieldset>
          {finding.methods.map((code) => (
            <p key={code} className={styles.small}>
              {methodOf(code).name} cannot see: {methodOf(code).cannotSee}
            </p>
          ))}
          {finding.state === 'none-found' && finding.defect !== null && finding.methods.length > 0 && (
            <p>{notFoundSentence(finding.defect, finding.methods, finding.locations[0] ?? null)}</p>
          )}
          {defect !== null && <p className={styles.small}>{defect.misses}</p>}
        </>
      )}
    </section>
  );
}
