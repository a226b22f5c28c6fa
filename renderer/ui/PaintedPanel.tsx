import type { ReactNode } from 'react';
import { classNames } from './class-names.ts';
import painted from './painted.module.css';

interface PaintedPanelProps {
  readonly children: ReactNode;
  readonly className?: string | undefined;
  /** Names the region for a reader that speaks the screen. */
  readonly label?: string | undefined;
}

/** The one thing in a pane that is in hand. */
export function PaintedPanel({ children, className, label }: PaintedPanelProps) {
  return label === undefined ? (
    <div className={classNames(painted.painted, className)}>{children}</div>
  ) : (
    <section aria-label={label} className={classNames(painted.painted, className)}>
      {children}
    </section>
  );
}
