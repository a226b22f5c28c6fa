/**
 * A name in the plain Latin letters that every reader of certificates and signature dictionaries agrees on. The report
 * itself carries it as it is written.
 */
export const plainLetters = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/[^\x20-\x7e]/g, '')
    .replace(/[()\\]/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
