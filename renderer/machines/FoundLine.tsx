import type { FloorMachine } from '../../shared-lib/contract/machines.ts';
import { go } from '../app/place.ts';
import styles from './FoundLine.module.css';

const longest = 140;

/** Where the search found it, when it was not on the plate: a line that leads there. */
export function FoundLine({ found }: { readonly found: FloorMachine['found'] }) {
  if (found === null || found.visitId === null) return null;
  const { words, visitId, findingId } = found;
  const shown = words.length > longest ? `${words.slice(0, longest).trimEnd()} ...` : words;
  return (
    <button
      type="button"
      className={styles.found}
      onClick={() => go({ name: 'visit', visitId, page: 'page', ...(findingId === null ? {} : { findingId }) })}
    >
      {findingId === null ? 'In a visit: ' : 'In a finding: '}
      {shown}
    </button>
  );
}
