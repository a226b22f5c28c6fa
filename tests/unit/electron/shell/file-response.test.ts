import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { byteRange } from '../../../../electron/shell/byte-range.ts';
import { fileResponse } from '../../../../electron/shell/file-response.ts';

describe('a Range header', () => {
  // Source: RFC 9110, 14.1.2, "Additional examples, assuming a representation of length 10000".
  test.each([
    ['bytes=0-499', { first: 0, last: 499 }],
    ['bytes=500-999', { first: 500, last: 999 }],
    ['bytes=-500', { first: 9500, last: 9999 }],
    ['bytes=9500-', { first: 9500, last: 9999 }],
    ['bytes=0-0', { first: 0, last: 0 }],
  ])('%s of 10000 bytes', (header, expected) => {
    expect(byteRange(header, 10_000)).toEqual(expected);
  });

  // Source: RFC 9110, 14.1.1 (first > last is invalid), 14.1.2 (a last past the end means the end; a suffix longer
  // than the whole is the whole; nothing to send is unsatisfiable), 14.2 (what is not understood may be ignored).
  test.each([
    ['bytes=9000-20000', { first: 9000, last: 9999 }],
    ['bytes=-20000', { first: 0, last: 9999 }],
    ['bytes=10000-', 'unsatisfiable'],
    ['bytes=-0', 'unsatisfiable'],
    ['bytes=500-499', null],
    ['bytes=0-0,-1', null],
    ['pages=1-2', null],
    ['bytes=-', null],
    [null, null],
  ])('%s of 10000 bytes', (header, expected) => {
    expect(byteRange(header, 10_000)).toEqual(expected);
  });
});

describe('a file as an answer', () => {
  let folder: string;
  let file: string;
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'Wérk Šhöp 数据 '));
    file = join(folder, 'ten');
    writeFileSync(file, '0123456789');
    writeFileSync(join(folder, 'empty'), '');
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  test('whole, with its length and the headers given', async () => {
    const response = await fileResponse(file, null, { 'content-type': 'image/jpeg' });
    expect(response.status).toBe(200);
    expect(response.headers.get('content-length')).toBe('10');
    expect(response.headers.get('content-type')).toBe('image/jpeg');
    expect(await response.text()).toBe('0123456789');
  });

  test('in part', async () => {
    const response = await fileResponse(file, 'bytes=2-4', {});
    expect(response.status).toBe(206);
    expect(response.headers.get('content-range')).toBe('bytes 2-4/10');
    expect(response.headers.get('content-length')).toBe('3');
    expect(await response.text()).toBe('234');
  });

  test('a part that it does not have is refused with its size', async () => {
    const response = await fileResponse(file, 'bytes=10-', {});
    expect(response.status).toBe(416);
    expect(response.headers.get('content-range')).toBe('bytes */10');
  });

  test('an empty file is an empty answer', async () => {
    const response = await fileResponse(join(folder, 'empty'), null, {});
    expect([response.status, response.headers.get('content-length'), await response.text()]).toEqual([200, '0', '']);
  });

  test.each([['absent'], ['.']])('%s is not a file: not found, and not remembered', async (name) => {
    const response = await fileResponse(join(folder, name), null, { 'cache-control': 'immutable' });
    expect(response.status).toBe(404);
    expect(response.headers.get('cache-control')).toBe('no-store');
  });
});
