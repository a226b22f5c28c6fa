import { execFileSync } from 'node:child_process';
import { mkdtempSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PDFDocument } from 'pdf-lib';
import { beforeAll, describe, expect, it } from 'vitest';
import { shopFingerprint, shopKey } from '../../../electron/recorder/seal/shop-key.ts';
import { signPdf } from '../../../electron/recorder/seal/sign-pdf.ts';
import { verifyPdf } from '../../../electron/recorder/seal/verify-pdf.ts';
import { freshFolder } from '../../support/test-recorder.ts';

const atMs = Date.UTC(2026, 5, 8, 12);
const words = {
  shopName: 'Kiln Yard Repairs (数据)',
  place: 'Orrenby',
  reason: 'Report 42, revision 1',
  contact: '',
  atMs,
};

let folder = '';
let plain: Uint8Array;
let sealed: Uint8Array;
let ours: string;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'seal '));
  const document = await PDFDocument.create();
  document.addPage([300, 300]).drawText('A report');
  // Signing by incremental update needs the classic cross-reference table, as the typesetter writes it.
  plain = await document.save({ useObjectStreams: false });
  const key = await shopKey(folder, { shopName: words.shopName, atMs });
  ours = key.fingerprint;
  sealed = await signPdf(plain, key, words);
});

describe('the seal', () => {
  it('leaves the typeset bytes as they were and adds to them', () => {
    expect(Buffer.from(sealed.subarray(0, plain.length)).equals(Buffer.from(plain))).toBe(true);
    expect(sealed.length).toBeGreaterThan(plain.length);
  });

  it('is valid and covers the whole document, says an independent reader (poppler)', () => {
    const file = join(freshFolder(), 'sealed.pdf');
    writeFileSync(file, sealed);
    const said = execFileSync('pdfsig', ['-nocert', file], { encoding: 'utf8' });
    expect(said).toContain('Signature is Valid');
    expect(said).toContain('Total document signed');
  });

  it('is genuine with our key, another shop’s with theirs, and not signed without one', async () => {
    expect(verifyPdf(sealed, ours)).toEqual({ state: 'genuine', fingerprint: ours });
    const other = await shopKey(freshFolder(), { shopName: 'Another', atMs });
    expect(verifyPdf(sealed, other.fingerprint).state).toBe("another shop's");
    expect(verifyPdf(sealed, null).state).toBe("another shop's");
    expect(verifyPdf(plain, ours).state).toBe('not signed');
    expect(verifyPdf(new TextEncoder().encode('no PDF at all'), ours).state).toBe('not signed');
  });

  it('shows one changed byte anywhere, in the text, in its own dictionary, in its own figures', () => {
    const text = Buffer.from(sealed).toString('latin1');
    const [gapStart, gapEnd] = [text.lastIndexOf('<3'), text.lastIndexOf('0>') + 2];
    const around = new Set<number>();
    for (let at = 0; at < sealed.length; at += 37) around.add(at);
    // Every byte of what the update added but its long gap, and of the gap's beginning and end.
    for (let at = plain.length; at < sealed.length; at += 1) {
      const inGap = at > gapStart + 5200 && at < gapEnd - 40;
      if (!inGap || at % 29 === 0) around.add(at);
    }
    const missed: number[] = [];
    for (const at of around) {
      const changed = sealed.slice();
      changed[at] = (changed[at] ?? 0) ^ 0x01;
      if (verifyPdf(changed, ours).state !== 'altered') missed.push(at);
    }
    expect(around.size).toBeGreaterThan(2_000);
    expect(missed).toEqual([]);
  }, 120_000);

  it('shows a letter of its figures in another case, something appended, and something cut off', () => {
    const text = Buffer.from(sealed).toString('latin1');
    const at = text.lastIndexOf('<30') + 1 + text.slice(text.lastIndexOf('<30') + 1).search(/[a-f]/);
    const upper = sealed.slice();
    upper[at] = (upper[at] ?? 0) - 32;
    expect(verifyPdf(upper, ours).state).toBe('altered');
    expect(verifyPdf(Buffer.concat([sealed, Buffer.from('\n')]), ours).state).toBe('altered');
    expect(verifyPdf(Buffer.concat([sealed, Buffer.from('\n%%EOF')]), ours).state).toBe('altered');
    expect(verifyPdf(sealed.subarray(0, sealed.length - 1), ours).state).toBe('altered');
  });

  it('keeps one key for a folder: made once, found again', async () => {
    expect(await shopFingerprint(folder)).toBe(ours);
    const before = statSync(join(folder, 'shop-key.p12')).mtimeMs;
    expect((await shopKey(folder, { shopName: 'renamed', atMs })).fingerprint).toBe(ours);
    expect(statSync(join(folder, 'shop-key.p12')).mtimeMs).toBe(before);
    expect(await shopFingerprint(freshFolder())).toBeNull();
  });
});
