import { InvalidArgumentError } from 'commander';
import type { XY } from '../../shared-lib/geometry/spaces.ts';

/** `X,Y` in pixels of the upright image. */
export const readPoint = (text: string): XY => {
  const match = /^\s*(-?\d+(?:\.\d+)?)\s*,\s*(-?\d+(?:\.\d+)?)\s*$/.exec(text);
  if (!match) throw new InvalidArgumentError('A point is two numbers with a comma between them, such as 812,340.5.');
  return { x: Number(match[1]), y: Number(match[2]) };
};
