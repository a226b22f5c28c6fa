import type { Mark } from '../../shared-lib/model/mark.ts';
import styles from './PhotoStage.module.css';
import { stageWords } from './words.ts';

interface MarkListProps {
  readonly listId: string;
  readonly marks: readonly Mark[];
  readonly picked: string | null;
  readonly nameOf: (mark: Mark) => string;
}

export function markItemId(listId: string, markId: string): string {
  return `${listId}-${markId}`;
}

/** The marks in words, not seen: what the canvas shows to an eye, this says to a screen reader. */
export function MarkList({ listId, marks, picked, nameOf }: MarkListProps) {
  if (marks.length === 0) return <p className={styles.unseen}>{stageWords.noMarks}</p>;
  return (
    <ul className={styles.unseen} aria-label={stageWords.marks}>
      {marks.map((mark) => (
        <li key={mark.id} id={markItemId(listId, mark.id)} aria-current={mark.id === picked || undefined}>
          {nameOf(mark)}
        </li>
      ))}
    </ul>
  );
}
