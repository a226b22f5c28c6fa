import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { addLoader, openTestRecorder, type TestRecorder } from '../../support/test-recorder.ts';

type Three = readonly [number, number, number];
type Two = readonly [number, number];
interface Truth {
  readonly features: Readonly<Record<string, { readonly mm: Three; readonly px: Two }>>;
  readonly areas?: Readonly<Record<string, { readonly px: readonly Two[] }>>;
  readonly cracks: Readonly<Record<string, { readonly lengthMm: number; readonly px: readonly Two[] }>>;
}

const folder = join(import.meta.dirname, '../../../assets/demo/photos');
export const pictureOf = (name: string): string => join(folder, `${name}.jpg`);
/** Our own rendered scenes: every place and length is exact, from the scene's description and not from its pixels. */
export const truthOf = (name: string): Truth =>
  JSON.parse(readFileSync(join(folder, `${name}.truth.json`), 'utf8')) as Truth;

export const xy = ([x, y]: readonly number[]) => ({ x: x ?? 0, y: y ?? 0 });

/** Features of a scene that lie in the plane z = 0, with their places in the photo. */
export const pointsInPlane = (name: string) =>
  Object.values(truthOf(name).features).flatMap(({ mm, px }) =>
    Math.abs(mm[2]) < 0.05 ? [{ px: xy(px), mm: xy(mm) }] : [],
  );

/** A visit with one photo of ours in it. */
export const withPhoto = (name: string, test: TestRecorder = openTestRecorder()) => withPicture(pictureOf(name), test);

export const withPicture = async (path: string, test: TestRecorder = openTestRecorder()) => {
  const { visitId } = await addLoader(test);
  const token = `token for ${path}`;
  test.recorder.offer({ token, path, for: 'read' });
  const { jobId } = await test.call('shot.take', { visitId, tokens: [token] });
  await expect
    .poll(
      () => test.events.some((event) => event.event === 'import' && event.jobId === jobId && event.ended !== 'no'),
      {
        timeout: 20_000,
      },
    )
    .toBe(true);
  const { shots } = await test.call('visit.get', { id: visitId });
  const shot = shots[0];
  if (!shot) throw new Error('no photo was taken in');
  return { ...test, visitId, shot };
};
