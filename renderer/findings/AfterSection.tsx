import { defectOf } from '../../shared-lib/defects/index.ts';
import { actionWords, tagWords } from '../../shared-lib/judgement/actions.ts';
import { findingActions } from '../../shared-lib/model/finding.ts';
import { Choice } from '../ui/Choice.tsx';
import { TextField } from '../ui/TextField.tsx';
import { Toggle } from '../ui/Toggle.tsx';
import styles from './FindingCard.module.css';
import type { SectionProps } from './section.ts';

/** What comes of it if left, what to watch for, what is advised, and the two tags. */
export function AfterSection({ finding, edit }: SectionProps) {
  const defect = defectOf(finding.defect);
  return (
    <section className={styles.section} aria-label="If left, and what is advised">
      <TextField
        label="What it leads to if left"
        lines="many"
        value={finding.ifLeft}
        onCommit={(ifLeft) => edit({ ifLeft })}
        hint={defect === null ? undefined : `Often: ${defect.ifLeft.join(', ')}.`}
        maxLength={1000}
      />
      <TextField
        label="What to watch for"
        lines="many"
        value={finding.watchFor}
        onCommit={(watchFor) => edit({ watchFor })}
        maxLength={1000}
      />
      <Choice
        label="I advise"
        value={finding.action}
        onChoose={(action) => edit({ action })}
        options={findingActions.map((action) => ({ value: action, words: actionWords[action] }))}
      />
      <TextField
        label="What exactly"
        value={finding.actionWords}
        onCommit={(words) => edit({ actionWords: words })}
        maxLength={1000}
      />
      <fieldset className={styles.row} aria-label="Tags hung on the machine">
        <Toggle
          label={`Tag hung: ${tagWords.doNotOperate.label.toLowerCase()}`}
          note={`protects ${tagWords.doNotOperate.protects}`}
          on={finding.doNotOperate}
          onChange={(doNotOperate) => edit({ doNotOperate })}
        />
        <Toggle
          label={`Tag hung: ${tagWords.doNotRun.label.toLowerCase()}`}
          note={`protects ${tagWords.doNotRun.protects}`}
          on={finding.doNotRun}
          onChange={(doNotRun) => edit({ doNotRun })}
        />
      </fieldset>
    </section>
  );
}
