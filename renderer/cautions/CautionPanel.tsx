import type { Caution } from '../../shared-lib/cautions/caution.ts';
import { hasAlertSymbol } from '../../shared-lib/cautions/signal-word.ts';
import { AlertSymbol } from './AlertSymbol.tsx';
import styles from './CautionPanel.module.css';

interface CautionPanelProps {
  readonly caution: Caution;
  /** What called it, where that is not plain from where it stands. */
  readonly because?: string | undefined;
}

/** One caution: its signal word on the standard's colour, and what to do, black on white. */
export function CautionPanel({ caution, because }: CautionPanelProps) {
  const { word, hazard, text } = caution;
  return (
    <section className={styles.panel} role="note" aria-label={`${word}: ${hazard}`}>
      <p className={styles.word} data-word={word}>
        {hasAlertSymbol(word) && <AlertSymbol className={styles.symbol} />}
        {word}
      </p>
      <p className={styles.message}>
        {text}
        {because !== undefined && <span className={styles.because}>{because}</span>}
      </p>
    </section>
  );
}
