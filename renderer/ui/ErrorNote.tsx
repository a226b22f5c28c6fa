import type { ReactNode } from 'react';
import styles from './ErrorNote.module.css';

export interface ErrorWords {
  readonly happened: string;
  readonly kept: string;
}

interface ErrorNoteProps extends ErrorWords {
  readonly id?: string | undefined;
  /** What the mechanic can do about it. */
  readonly children?: ReactNode;
}

/** What happened and what was kept, at the place where it happened. */
export function ErrorNote({ happened, kept, id, children }: ErrorNoteProps) {
  return (
    <div className={styles.note} id={id} role="alert">
      <p className={styles.happened}>{happened}</p>
      {kept !== '' && <p className={styles.kept}>{kept}</p>}
      {children !== undefined && <div className={styles.actions}>{children}</div>}
    </div>
  );
}
