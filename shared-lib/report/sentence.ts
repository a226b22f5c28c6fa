/** A note of the bench as a sentence: capital first, full stop last. Empty stays empty. */
export function asSentence(text: string): string {
  const trimmed = text.trim().replace(/[,;:\s]+$/, '');
  if (trimmed === '') return '';
  // A sign such as pH keeps its letters.
  const opened = /^\p{Ll}\p{Lu}/u.test(trimmed) ? trimmed : trimmed.charAt(0).toUpperCase() + trimmed.slice(1);
  return /[.!?…]["”’')]?$/.test(opened) ? opened : `${opened}.`;
}

/** Without its full stop and with a small first letter, to stand inside another sentence. Words in capitals stay. */
export function asPart(text: string): string {
  const trimmed = text.trim().replace(/[.;,\s]+$/, '');
  return /^(\p{Lu}\p{Ll}|A )/u.test(trimmed) ? trimmed.charAt(0).toLowerCase() + trimmed.slice(1) : trimmed;
}

/**
 * At most `most` characters with an ellipsis, so that page one stays one page: cut after a sentence where more than half
 * stays, else between words.
 */
export function shortened(text: string, most: number): string {
  // Spaces that never break stay what they are.
  const flat = text.replaceAll(/[^\S\u00a0\u202f]+/g, ' ').trim();
  if ([...flat].length <= most) return flat;
  const cut = [...flat].slice(0, most - 1).join('');
  const [whole = ''] = /^.*[.!?]["”’')]?(?= )/u.exec(cut.slice(0, -1)) ?? [];
  if (whole.length > most / 2) return `${whole} …`;
  const space = cut.lastIndexOf(' ');
  return `${(space > most * 0.6 ? cut.slice(0, space) : cut).replace(/[,;:.\s]+$/, '')}…`;
}

export function paragraphs(text: string): string[] {
  return text
    .split(/\n\s*\n|\r\n?\s*\r\n?/)
    .map((paragraph) => paragraph.trim())
    .filter((paragraph) => paragraph !== '');
}

/** 0 → none, 1 → one finding, 12 → 12 findings */
export function counted(count: number, one: string, many = `${one}s`): string {
  const words = [
    'no',
    'one',
    'two',
    'three',
    'four',
    'five',
    'six',
    'seven',
    'eight',
    'nine',
    'ten',
    'eleven',
    'twelve',
  ];
  return `${words[count] ?? count} ${count === 1 ? one : many}`;
}
