import type { ReactNode } from 'react';
import styles from './NoticeStrip.module.css';

interface NoticeStripProps {
  /** What happened, and when. */
  readonly happened: string;
  /** What was kept. */
  readonly kept: string;
  readonly children?: ReactNode;
}

/** The dark strip over everything: something that concerns the whole window. */
export function NoticeStrip({ happened, kept, children }: NoticeStripProps) {
  return (
    <div className={styles.strip} role="status">
      <p className={styles.words}>
        <strong>{happened}</strong>
        {kept}
      </p>
      <div className={styles.actions}>{children}</div>
    </div>
  );
}
