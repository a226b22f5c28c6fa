import { type ReactNode, useEffect, useEffectEvent, useRef } from 'react';
import { classNames } from './class-names.ts';
import { Icon } from './Icon.tsx';
import { keepTabInside } from './keep-tab-inside.ts';
import styles from './Panel.module.css';

interface PanelProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
  readonly foot?: ReactNode;
  readonly wide?: boolean | undefined;
  /** Holds nothing to use, so the sheet itself takes the keys that scroll. */
  readonly isOnlyRead?: boolean | undefined;
}

/** The sheets that are open, the topmost last: Escape closes that one. */
const openSheets: (() => void)[] = [];

/**
 * A sheet at the side. What lies under it stays in use by hand; Tab stays in the sheet, since a field that it covers would
 * be filled unseen. Escape closes it and the focus goes back to where it was.
 */
export function Panel({ title, onClose, children, foot, wide = false, isOnlyRead = false }: PanelProps) {
  const panel = useRef<HTMLElement>(null);

  useEffect(() => {
    const before = document.activeElement;
    const inside = panel.current?.contains(before) === true;
    const first = panel.current?.querySelector<HTMLElement>('textarea, input[type=text]');
    if (!inside) (first ?? panel.current)?.focus();
    return () => {
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, []);

  const close = useEffectEvent(onClose);
  useEffect(() => {
    const own = () => close();
    openSheets.push(own);
    const letTabGo = keepTabInside(panel, () => openSheets.at(-1) === own);
    // Heard from the window: a button that was just switched off has dropped the focus out of the sheet.
    const handleKeyDown = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || event.defaultPrevented || openSheets.at(-1) !== own) return;
      event.preventDefault();
      own();
    };
    window.addEventListener('keydown', handleKeyDown);
    return () => {
      window.removeEventListener('keydown', handleKeyDown);
      letTabGo();
      openSheets.splice(openSheets.indexOf(own), 1);
    };
  }, []);

  return (
    <section
      ref={panel}
      tabIndex={-1}
      role="dialog"
      aria-label={title}
      className={classNames(styles.panel, wide && styles.wide)}
    >
      <header className={styles.head}>
        <h2>{title}</h2>
        <button type="button" className={styles.close} onClick={onClose} aria-label={`Close: ${title}`}>
          <Icon name="close" />
        </button>
      </header>
      {isOnlyRead ? (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: without it the keyboard could not scroll.
        <section className={styles.body} tabIndex={0} aria-label={title}>
          {children}
        </section>
      ) : (
        <div className={styles.body}>{children}</div>
      )}
      {foot !== undefined && <footer className={styles.foot}>{foot}</footer>}
    </section>
  );
}
