import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const size = { width: 1200, height: 900 };

const escaped = (text: string): string => text.replace(/[&<>"']/g, (character) => `&#${character.codePointAt(0)};`);

/** Two lines of about forty letters are as much as the picture holds. */
const lines = (label: string): string[] => {
  const words = label.split(/\s+/);
  const wrapped: string[] = [''];
  for (const word of words) {
    const last = wrapped.length - 1;
    const longer = `${wrapped[last]} ${word}`.trim();
    if (longer.length <= 40) wrapped[last] = longer;
    else if (wrapped.length < 2) wrapped.push(word);
  }
  return wrapped;
};

/**
 * A plain labelled picture that cannot be mistaken for a photo, for records entered from a file that says 'a photo shows
 * it' without holding one. It is gone when `work` ends; what was taken in stays.
 */
export const withTestPicture = async (
  label: string,
  work: (path: string, picture: { width: number; height: number }) => Promise<void>,
): Promise<void> => {
  const folder = await mkdtemp(join(tmpdir(), 'test-picture-'));
  try {
    const path = join(folder, 'test-picture.png');
    const text = lines(label)
      .map(
        (line, index) =>
          `<text x="60" y="${110 + index * 56}" font-family="sans-serif" font-size="40" fill="#3C4046">${escaped(line)}</text>`,
      )
      .join('');
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${size.width}" height="${size.height}"><rect width="100%" height="100%" fill="#D8D9D5"/><rect x="20" y="20" width="${size.width - 40}" height="${size.height - 40}" fill="none" stroke="#6E7276" stroke-width="3" stroke-dasharray="14 10"/>${text}</svg>`;
    const { default: sharp } = await import('sharp');
    await sharp(Buffer.from(svg)).png().toFile(path);
    await work(path, size);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
};
