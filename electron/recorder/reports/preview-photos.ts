import sharp from 'sharp';

/** As wide as a page is shown on a large screen; the print has the full screen-sized picture. */
const previewEdge = 900;
const previewQuality = 75;
/** About twenty megabytes of small pictures, kept while a report is looked at again and again. */
const mostKept = 200;

const kept = new Map<string, Uint8Array>();

/**
 * A smaller copy of a picture for the preview: pages go through to the window as text, and whole photos would make a
 * hundred-page report a hundred megabytes. What can't be made smaller is passed on as it is.
 */
export async function previewPhoto(digest: string, bytes: Uint8Array): Promise<Uint8Array> {
  const known = kept.get(digest);
  if (known) return known;
  const small = await sharp(bytes)
    .resize(previewEdge, previewEdge, { fit: 'inside', withoutEnlargement: true })
    .jpeg({ quality: previewQuality })
    .toBuffer()
    .catch(() => bytes);
  const oldest = kept.keys().next();
  if (kept.size >= mostKept && !oldest.done) kept.delete(oldest.value);
  kept.set(digest, small);
  return small;
}
