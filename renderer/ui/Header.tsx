import type { ReactNode } from 'react';
import { classNames } from './class-names.ts';
import styles from './Header.module.css';

export interface TrailStep {
  readonly words: string;
  readonly onGo: () => void;
}

interface PageTab<T extends string> {
  readonly page: T;
  readonly words: string;
}

interface HeaderProps {
  readonly children: ReactNode;
  readonly tall?: boolean | undefined;
}

/** The strip over a place. */
export function Header({ children, tall = false }: HeaderProps) {
  return <header className={classNames(styles.header, tall && styles.tall)}>{children}</header>;
}

interface BreadcrumbProps {
  readonly trail: readonly TrailStep[];
  readonly here: string;
}

/** Where one stands, and the way back. */
export function Breadcrumb({ trail, here }: BreadcrumbProps) {
  return (
    <nav aria-label="Places" className={styles.places}>
      <ol className={styles.trail}>
        {trail.map((step) => (
          <li key={step.words} className={styles.step}>
            <button type="button" className={styles.place} onClick={step.onGo}>
              <span className={styles.name}>{step.words}</span>
            </button>
          </li>
        ))}
        <li className={styles.step}>
          <h1 className={styles.here} aria-current="page">
            {here}
          </h1>
        </li>
      </ol>
    </nav>
  );
}

interface PagesProps<T extends string> {
  readonly pages: readonly PageTab<T>[];
  readonly current: T;
  readonly onGo: (page: T) => void;
}

/** The pages of one place. */
export function Pages<T extends string>({ pages, current, onGo }: PagesProps<T>) {
  return (
    <nav aria-label="Pages" className={styles.pages}>
      {pages.map(({ page, words }) => (
        <button
          type="button"
          key={page}
          className={styles.page}
          aria-current={page === current ? 'page' : undefined}
          onClick={() => onGo(page)}
        >
          {words}
        </button>
      ))}
    </nav>
  );
}

/** Takes the room between trail and pages. */
export function HeaderMiddle({ children }: { readonly children?: ReactNode }) {
  return <div className={styles.middle}>{children}</div>;
}

export function HeaderEnd({ children }: { readonly children: ReactNode }) {
  return <div className={styles.end}>{children}</div>;
}
