import type { StandingTag } from '../../shared-lib/contract/standing.ts';
import styles from './TagRow.module.css';

interface TagRowProps {
  readonly tags: readonly StandingTag[];
}

/** The findings' stamped tags in the order of the standing. */
export function TagRow({ tags }: TagRowProps) {
  return (
    <ul className={styles.tags} aria-label="Findings">
      {tags.map((tag) => (
        <li key={tag.findingId}>{tag.number}</li>
      ))}
    </ul>
  );
}
