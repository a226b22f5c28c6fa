import type { Layout } from '../../shared-lib/model/layout.ts';

/** An invented four-cylinder loader with everything a finding may stand on. */
export const loaderLayout: Layout = {
  engine: {
    arrangement: 'inline',
    cylinders: 4,
    heads: 1,
    valves: { intake: 1, exhaust: 1 },
    liner: 'wet',
    rotation: 'CW',
    heading: 0,
    fuel: 'diesel',
    cooling: 'liquid',
  },
  numbering: { scheme: 'free-first' },
  hydraulics: ['boom', 'bucket'],
  volts: 12,
};
