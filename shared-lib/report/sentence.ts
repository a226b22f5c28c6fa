/** A note of the bench as a sentence: capital first, full stop last. Empty stays empty. */
export function asSentence(text: string): string {
  const trimmed = text.trim().replace(/[,;:\s]+$/, '');
  if (trimmed === '') return '';
  const opened = trimmed.charAt(0).toUpperCase() + trimmed.slice(1);
  return /[.!?…]["”’')]?$/.test(opened) ? opened : `${opened}.`;
}

/** Without its full stop and with a small first letter, to stand inside another sentence. Words in capitals stay. */
export function asPart(text: string): string {
  const trimmed = text.trim().replace(/[.;,\s]+$/, '');
  return /^\p{Lu}\p{Ll}/u.test(trimmed) ? trimmed.charAt(0).toLowerCase() + trimmed.slice(1) : trimmed;
}

/** At most `most` characters, cut between words and with an ellipsis, so that page one stays one page. */
export function shortened(text: string, most: number): string {
  const flat = text.replaceAll(/\s+/g, ' ').trim();
  if ([...flat].length <= most) return flat;
  const cut = [...flat].slice(0, most - 1).join('');
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
