import { type Homography, invert, project } from '../../../../shared-lib/calibration/homography.ts';
import { type GreyImage, sampleGrey } from '../../../../shared-lib/tracing/grey.ts';
import { gaussian } from '../tracing/drawn-surface.ts';

/** A picture as another camera would see it, with noise and half a stop less light; `h` leads from old to new. */
export const seenAnew = (image: GreyImage, h: Homography, random: () => number): GreyImage => {
  const back = invert(h);
  if (!back) throw new Error('a mapping that flattens');
  const data = new Float32Array(image.width * image.height);
  for (let at = 0; at < data.length; at += 1) {
    const from = project(back, { x: at % image.width, y: Math.floor(at / image.width) });
    const isOn = from && from.x >= 0 && from.y >= 0 && from.x < image.width && from.y < image.height;
    data[at] = (isOn ? 0.7 * sampleGrey(image, from) : 40) + 3 * gaussian(random);
  }
  return { ...image, data };
};
