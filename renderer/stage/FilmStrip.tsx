import { type ReactNode, useEffect, useLayoutEffect, useRef, useState } from 'react';
import { alongRow, moveFocus } from '../ui/move-focus.ts';
import styles from './FilmStrip.module.css';
import { useLetterKeys } from './use-letter-keys.ts';
import { stageWords } from './words.ts';

export interface FilmShot {
  readonly id: string;
  /** The number a mechanic calls it by. */
  readonly sequence: number;
  readonly thumbnailUrl: string;
  readonly caption: string;
}

interface FilmStripProps {
  readonly shots: readonly FilmShot[];
  readonly picked: string | null;
  readonly onPick: (shotId: string) => void;
  /** What is said of the picked photo, above the strip. */
  readonly children?: ReactNode;
}

/** The visit's shots along the edge of the stage: N and B go forward and back, arrows where the focus is in it. */
export function FilmStrip({ shots, picked, onPick, children }: FilmStripProps) {
  const strip = useRef<HTMLOListElement>(null);
  const [hidden, setHidden] = useState(0);
  const now = shots.findIndex(({ id }) => id === picked);

  useLetterKeys((letter) => {
    const by = letter === 'N' ? 1 : letter === 'B' ? -1 : 0;
    const next = by === 0 ? undefined : shots[now + by];
    if (next && now + by >= 0) onPick(next.id);
    return by !== 0;
  });
  useEffect(() => {
    if (picked === null) return;
    strip.current?.querySelector('[aria-current]')?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, [picked]);
  useLayoutEffect(() => {
    const element = strip.current;
    if (!element) return;
    const count = () => setHidden(countAfter(element));
    const observer = new ResizeObserver(count);
    observer.observe(element);
    element.addEventListener('scroll', count, { passive: true });
    count();
    return () => {
      observer.disconnect();
      element.removeEventListener('scroll', count);
    };
  }, []);

  return (
    <div className={styles.film}>
      {children !== undefined && <div className={styles.caption}>{children}</div>}
      <div className={styles.row}>
        <ol
          ref={strip}
          className={styles.strip}
          aria-label={stageWords.shots}
          onKeyDown={(event) => {
            const next = moveFocus(event, alongRow);
            const there = next === null ? undefined : shots[next];
            if (there) onPick(there.id);
          }}
        >
          {shots.map((shot, index) => (
            <li key={shot.id}>
              <button
                type="button"
                className={styles.shot}
                // Tab passes the strip in one step, however many photos there are.
                tabIndex={index === Math.max(0, now) ? 0 : -1}
                aria-current={shot.id === picked || undefined}
                aria-label={
                  shot.caption === ''
                    ? stageWords.photo(shot.sequence)
                    : `${stageWords.photo(shot.sequence)}: ${shot.caption}`
                }
                onClick={() => onPick(shot.id)}
              >
                <img src={shot.thumbnailUrl} alt="" loading="lazy" draggable={false} />
                <span className={styles.number}>{shot.sequence}</span>
              </button>
            </li>
          ))}
        </ol>
        {hidden > 0 && <span className={styles.more}>{stageWords.more(hidden)}</span>}
      </div>
    </div>
  );
}

/** How many shots lie past the strip's right end. */
function countAfter(strip: HTMLElement): number {
  const right = strip.getBoundingClientRect().right;
  return [...strip.children].filter((child) => child.getBoundingClientRect().left >= right - 8).length;
}
