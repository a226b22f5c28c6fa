import { blur } from '../tracing/blur.ts';
import type { ColourPlanes } from './planes.ts';

/** What a pixel and its surroundings look like: a few numbers, each a picture of its own. */
export interface Features {
  readonly width: number;
  readonly height: number;
  readonly maps: readonly Float32Array[];
}

/** How far pixels are seen together: a patch of even colour has a sharp border, one of pits only a rough one. */
export type Grain = 'fine' | 'coarse';

const sigmas: Readonly<Record<Grain, { readonly colour: number; readonly rough: number }>> = {
  fine: { colour: 1.5, rough: 4 },
  coarse: { colour: 8, rough: 9 },
};
/** What is finer than the first is grain; what lies between the two are spots. */
const grainSigma = 1.2;
const spotSigma = 5;
/** One edge must not make its whole surroundings rough: grain counts up to this many times the picture's usual grain. */
const mostTimesUsual = 3;

/** Colour, and roughness: how much the grain and the spots round a pixel vary. */
export function featuresOf({ width, height, light, red, yellow }: ColourPlanes, grain: Grain): Features {
  const { colour, rough } = sigmas[grain];
  const smooth = (data: Float32Array, sigma: number) => blur(data, width, height, sigma);
  const sharp = smooth(light, grainSigma);
  const calm = smooth(light, spotSigma);
  return {
    width,
    height,
    maps: [
      smooth(light, colour),
      smooth(red, colour),
      smooth(yellow, colour),
      smooth(cappedDifference(light, sharp), rough),
      smooth(cappedDifference(sharp, calm), rough),
    ],
  };
}

function cappedDifference(a: Float32Array, b: Float32Array): Float32Array {
  const differences = new Float32Array(a.length);
  const some = new Float32Array(Math.ceil(a.length / 31));
  for (let i = 0; i < a.length; i += 1) {
    const difference = Math.abs((a[i] as number) - (b[i] as number));
    differences[i] = difference;
    if (i % 31 === 0) some[i / 31] = difference;
  }
  some.sort();
  const most = mostTimesUsual * ((some[some.length >> 1] ?? 0) + 0.5);
  for (let i = 0; i < differences.length; i += 1) differences[i] = Math.min(most, differences[i] as number);
  return differences;
}

/** The least spread that a feature is granted: a camera's own noise, in grey levels. */
export const leastSpread: readonly number[] = [2, 1.2, 1.2, 0.4, 0.8];

/** The colours alone: their borders are sharp, while how rough a pixel is is seen over its surroundings. */
export const coloursOf = (features: Features): Features => ({ ...features, maps: features.maps.slice(0, 3) });
