const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

/** Names a photo's bytes by their digest, wherever they lie. Source: RFC 6920, Naming Things with Hashes. */
export function contentName(sha256Hex: string): string {
  let bits = 0;
  let count = 0;
  let text = '';
  for (const digit of sha256Hex) {
    bits = (bits << 4) | Number.parseInt(digit, 16);
    count += 4;
    while (count >= 6) {
      count -= 6;
      text += alphabet[(bits >> count) & 63];
      bits &= (1 << count) - 1;
    }
  }
  if (count > 0) text += alphabet[(bits << (6 - count)) & 63];
  return `ni:///sha-256;${text}`;
}

/** @returns the digest in hexadecimal, or null for a name of another kind */
export function digestOf(name: string): string | null {
  const match = /^ni:\/\/[^/]*\/sha-256;([\w-]{43})$/.exec(name);
  if (!match) return null;
  let bits = 0;
  let count = 0;
  let hex = '';
  for (const letter of match[1] ?? '') {
    bits = (bits << 6) | alphabet.indexOf(letter);
    count += 6;
    while (count >= 4) {
      count -= 4;
      hex += ((bits >> count) & 15).toString(16);
      bits &= (1 << count) - 1;
    }
  }
  return hex.slice(0, 64);
}
