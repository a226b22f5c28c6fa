/** A photo that is ready to be drawn, upright whatever its EXIF says. */
export interface Decoded {
  readonly image: ImageBitmap | HTMLImageElement;
  readonly width: number;
  readonly height: number;
}

/**
 * Decodes away from the window's own thread where it can, so that a large photo does not stop the hand. Where the
 * address cannot be fetched as data, an image element decodes it; both turn the picture as EXIF says.
 */
export async function decode(url: string, signal: AbortSignal): Promise<Decoded> {
  const blob = await fetch(url, { signal }).then(
    (response) => (response.ok ? response.blob() : Promise.reject(new Error(`${response.status}`))),
    () => null,
  );
  signal.throwIfAborted();
  if (!blob) return decodeByElement(url, signal);
  const image = await createImageBitmap(blob, { imageOrientation: 'from-image' });
  if (signal.aborted) image.close();
  signal.throwIfAborted();
  return { image, width: image.width, height: image.height };
}

function decodeByElement(url: string, signal: AbortSignal): Promise<Decoded> {
  return new Promise((resolve, reject) => {
    const image = new Image();
    image.onload = () => resolve({ image, width: image.naturalWidth, height: image.naturalHeight });
    image.onerror = () => reject(new Error('not decoded'));
    signal.addEventListener('abort', () => {
      image.src = '';
      reject(signal.reason);
    });
    image.src = url;
  });
}

/** Gives the memory back at once; a 24-megapixel photo is 96 MB. */
export function release(decoded: Decoded | null): void {
  if (decoded?.image instanceof ImageBitmap) decoded.image.close();
}
