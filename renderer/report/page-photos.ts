const address = /photo:\/\/screen\/[0-9a-f]{64}/g;

/** A page that is shown as a picture can fetch nothing, so its photos go into it. One that can't be had leaves its place empty. */
export async function withPhotos(page: string): Promise<string> {
  const addresses = [...new Set(page.match(address))];
  const photos = new Map(await Promise.all(addresses.map(async (url) => [url, await dataOf(url)] as const)));
  return page.replaceAll(address, (url) => photos.get(url) ?? url);
}

/** A photo as a `data:` address; null where it is not served. */
async function dataOf(url: string): Promise<string | null> {
  const answer = await fetch(url).catch(() => null);
  if (answer === null || !answer.ok) return null;
  const reader = new FileReader();
  const read = new Promise<string | null>((resolve) => {
    reader.onload = () => resolve(typeof reader.result === 'string' ? reader.result : null);
    reader.onerror = () => resolve(null);
  });
  reader.readAsDataURL(await answer.blob());
  return await read;
}
