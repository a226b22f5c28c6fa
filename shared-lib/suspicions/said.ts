const wordsOf = (text: string): readonly string[] => text.toLowerCase().match(/[\p{L}\d]+/gu) ?? [];

/** Words that say a thing is not so, where they stand before it: `no leak`. */
const denials: ReadonlySet<string> = new Set(['no', 'not', 'never', 'without']);

/** How many words may stand between two of a phrase: `uses half a litre of water`. */
const mostBetween = 4;

/** Whether the rest of a phrase follows its first word, which stands here. */
function isSaidFrom(start: number, phrase: readonly string[], words: readonly string[]): boolean {
  let at = start;
  return phrase.slice(1).every((begins) => {
    const next = words.slice(at + 1, at + 2 + mostBetween).findIndex((word) => word.startsWith(begins));
    at += next + 1;
    return next >= 0;
  });
}

/**
 * Whether a text says one of some phrases: beginnings of words, in their order and not far apart. What is denied is not
 * said. It reads clues to propose a test by, nothing more.
 *
 * @param phrases  in lower case: `crack`, `uses water`
 */
export function says(text: string, phrases: readonly string[]): boolean {
  const words = wordsOf(text);
  return phrases.some((phrase) => {
    const parts = wordsOf(phrase);
    const [first] = parts;
    if (first === undefined) return false;
    return words.some(
      (word, index) =>
        word.startsWith(first) && !denials.has(words[index - 1] ?? '') && isSaidFrom(index, parts, words),
    );
  });
}
