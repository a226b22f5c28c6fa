import type { FileHandle } from 'node:fs/promises';

/**
 * Whether the outermost boxes of an ISO/IEC 14496-12 file all end inside it. A HEIC that lost its tail may still 'decode':
 * to a small picture that was never the photo.
 */
export const isWholeContainer = async (file: FileHandle): Promise<boolean> => {
  const { size } = await file.stat();
  const header = Buffer.alloc(16);
  // Few boxes stand at the top of a picture; a long chain of tiny ones is no photo.
  for (let at = 0, boxes = 0; at < size; boxes += 1) {
    const { bytesRead } = await file.read(header, 0, 16, at);
    if (bytesRead < 8 || boxes > 10_000) return false;
    const short = header.readUInt32BE(0);
    if (short === 0) return true;
    if (short === 1 && bytesRead < 16) return false;
    const length = short === 1 ? Number(header.readBigUInt64BE(8)) : short;
    if (length < (short === 1 ? 16 : 8)) return false;
    at += length;
    if (at > size) return false;
  }
  return true;
};
