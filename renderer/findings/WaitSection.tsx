import { damageClasses } from '../../shared-lib/judgement/damage-class.ts';
import { runWorseWords, urgencies } from '../../shared-lib/judgement/urgency.ts';
import type { DamageClass, Urgency } from '../../shared-lib/model/finding.ts';
import { Choice } from '../ui/Choice.tsx';
import styles from './FindingCard.module.css';
import type { SectionProps } from './section.ts';

/** Will it last, and what does waiting cost: two questions that are never blended with the first. */
export function WaitSection({ finding, edit }: SectionProps) {
  return (
    <section className={styles.section} aria-label="How soon, and what waiting costs">
      <Choice
        label="How soon it matters"
        value={finding.urgency === null ? null : String(finding.urgency)}
        onChoose={(value) => edit({ urgency: Number(value) as Urgency })}
        options={urgencies.map(({ urgency, label }) => ({ value: String(urgency), words: label }))}
      />
      <Choice
        label="Does running make it worse?"
        value={finding.runWorse === null ? null : finding.runWorse ? 'yes' : 'no'}
        onChoose={(value) => edit({ runWorse: value === 'yes' })}
        options={[
          { value: 'yes', words: 'yes' },
          { value: 'no', words: 'no' },
        ]}
        hint={`Such as ${runWorseWords.examples.join(', ')}.`}
      />
      <Choice
        label="What waiting can cost"
        layout="column"
        value={finding.damageClass === null ? null : String(finding.damageClass)}
        onChoose={(value) => edit({ damageClass: Number(value) as DamageClass })}
        options={damageClasses.map(({ damageClass, label, sense }) => ({
          value: String(damageClass),
          words: label,
          note: sense,
        }))}
      />
    </section>
  );
}
