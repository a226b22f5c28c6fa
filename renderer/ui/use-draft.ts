import { useState } from 'react';

/**
 * What is being typed, until it is committed. A draft outlives a refused commit, and what was typed on after a commit
 * outlives its arrival, so nothing typed is lost; else it gives way as soon as the record's own value changes.
 */
export function useDraft(value: string) {
  const [draft, setDraft] = useState<string | null>(null);
  const [committed, setCommitted] = useState<string | null>(null);
  const [seen, setSeen] = useState(value);
  if (value !== seen) {
    setSeen(value);
    setCommitted(null);
    if (committed === null || draft === committed) setDraft(null);
  }
  return {
    shown: draft ?? value,
    isChanged: draft !== null && draft !== value,
    type: (text: string) => setDraft(text),
    drop: () => setDraft(null),
    /** Says that the draft as it stands was handed over to be kept. */
    handOver: () => setCommitted(draft),
  };
}
