import type { ReactNode } from 'react';
import { classNames } from './class-names.ts';
import styles from './EmptyPlace.module.css';

interface EmptyPlaceProps {
  readonly title: string;
  /** What belongs here. */
  readonly children: ReactNode;
  /** The first step. */
  readonly actions?: ReactNode;
  /** A drawing of what will stand here. */
  readonly drawing?: ReactNode;
  readonly compact?: boolean | undefined;
}

/** Says what belongs here and offers the first step, between four scribed corners. */
export function EmptyPlace({ title, children, actions, drawing, compact = false }: EmptyPlaceProps) {
  return (
    <section className={classNames(styles.frame, compact && styles.compact)} aria-label={title}>
      {(['topLeft', 'topRight', 'bottomLeft', 'bottomRight'] as const).map((corner) => (
        <span key={corner} className={classNames(styles.corner, styles[corner])} />
      ))}
      <div className={styles.text}>
        <h2>{title}</h2>
        {children}
        {actions !== undefined && <div className={styles.actions}>{actions}</div>}
      </div>
      {drawing}
    </section>
  );
}
