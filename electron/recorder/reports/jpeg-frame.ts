const startOfImage = 0xffd8;
const endOfImage = 0xffd9;
const startOfScan = 0xda;
/** Baseline, extended and progressive, all Huffman coded: what readers of PDFs decode. */
const frames: readonly number[] = [0xc0, 0xc1, 0xc2];

export interface JpegFrame {
  readonly widthPx: number;
  readonly heightPx: number;
}

/**
 * The frame of a JPEG that goes into a PDF as it is: 8 bits, grey or three colours, with a scan after it and the end
 * there. What the scans hold is not looked at: it is decoded by whoever shows the page.
 *
 * @returns null for anything else
 * Source: ITU-T T.81 (1992), B.1.1 markers, B.2.2 frame header; ISO 32000-1:2008, 7.4.8 DCTDecode.
 */
export function jpegFrame(bytes: Uint8Array): JpegFrame | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = bytes.byteLength - 2;
  if (end < 2 || view.getUint16(0) !== startOfImage || view.getUint16(end) !== endOfImage) return null;
  let frame: JpegFrame | null = null;
  for (let at = 2; at + 9 < end && view.getUint8(at) === 0xff; at += 2 + view.getUint16(at + 2)) {
    const marker = view.getUint8(at + 1);
    if (marker === startOfScan) return frame;
    if (frames.includes(marker)) frame = frameAt(view, at + 4);
  }
  return null;
}

function frameAt(view: DataView, at: number): JpegFrame | null {
  const [heightPx, widthPx, components] = [view.getUint16(at + 1), view.getUint16(at + 3), view.getUint8(at + 5)];
  const isShown = view.getUint8(at) === 8 && widthPx > 0 && heightPx > 0 && (components === 1 || components === 3);
  return isShown ? { widthPx, heightPx } : null;
}
