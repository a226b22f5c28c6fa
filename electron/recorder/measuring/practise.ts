import { traceLine } from '../../../shared-lib/tracing/trace.ts';

const edge = 200;
/** The second time round, what is hot is compiled for good; a third gains nothing more. */
const rounds = 2;

/**
 * Traces a made-up line before the first photo comes. Code that has run is compiled by the time a click waits for it: a
 * first trace then takes about what later ones take.
 */
export const practise = (): void => {
  const data = Float32Array.from({ length: edge * edge }, (_, at) => {
    const [x, y] = [at % edge, Math.floor(at / edge)];
    const grain = Math.sin(12.9898 * x + 78.233 * y) * 12;
    return 130 + grain - (Math.abs(x - y - 6 * Math.sin(y / 9)) < 1.5 ? 60 : 0);
  });
  const image = { width: edge, height: edge, left: 0, top: 0, data };
  const points = [
    { x: 2, y: 2 },
    { x: edge - 3, y: edge - 3 },
  ];
  for (let round = 0; round < rounds; round += 1) traceLine(image, { points });
};
