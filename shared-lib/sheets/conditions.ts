import type { NumberSpec } from './sheet-kind.ts';
import { seaLevelKpa, standardPressureKpa } from './standards/atmosphere.ts';

/** Conditions that several sheets ask for. */
export const altitude: NumberSpec = {
  kind: 'number',
  label: 'Altitude',
  unit: 'm',
  possible: [-450, 9_000],
  usual: [-50, 4_500],
  because: 'no machine works there',
};

export const systemVolts: NumberSpec = {
  kind: 'number',
  label: 'System',
  unit: 'V',
  possible: [6, 48],
  usual: [6, 24],
  because: 'starting systems have 6 to 48 volts',
};

export const ambient: NumberSpec = {
  kind: 'number',
  label: 'Air temperature',
  unit: '°C',
  possible: [-60, 70],
  usual: [-35, 50],
};

/** Air pressure at the shop; sea level where no altitude is known. */
export const airKpa = (altitudeM: number | null): number =>
  altitudeM === null ? seaLevelKpa : standardPressureKpa(altitudeM);
