import { useState } from 'react';

/**
 * What is being typed, until it is committed. A draft outlives a refused commit, so nothing typed is lost, and gives way
 * as soon as the record's own value changes.
 */
export function useDraft(value: string) {
  const [draft, setDraft] = useState<string | null>(null);
  const [seen, setSeen] = useState(value);
  if (value !== seen) {
    setSeen(value);
    setDraft(null);
  }
  return {
    shown: draft ?? value,
    isChanged: draft !== null && draft !== value,
    type: (text: string) => setDraft(text),
    drop: () => setDraft(null),
  };
}
