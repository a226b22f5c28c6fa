/** What a unit measures. Two units convert into each other only inside one dimension. */
export type Dimension =
  | 'length'
  | 'area'
  | 'volume'
  | 'pressure'
  | 'temperature'
  | 'time'
  | 'torque'
  | 'angle'
  | 'voltage'
  | 'current'
  | 'resistance'
  | 'speed'
  | 'acceleration'
  | 'share'
  | 'turning speed'
  | 'drops'
  | 'mass'
  | 'flow'
  | 'drift'
  | 'growth'
  | 'age';

export type UnitSystem = 'metric' | 'us';

export interface Unit {
  /** As people see it after the number. */
  readonly symbol: string;
  readonly dimension: Dimension;
  /** Value in the dimension's base unit = value x factor + offset. */
  readonly factor: number;
  readonly offset?: number;
  readonly system: UnitSystem | 'both';
  /** Other ways it is typed; matched without regard to case unless `symbol` itself depends on it. */
  readonly typed?: readonly string[];
  /** The degree sign and inch mark stand close to the number. */
  readonly closeUp?: true;
}

const inchMm = 25.4;
const poundKg = 0.45359237;
const standardGravity = 9.80665;
const gallonMl = 231 * (inchMm / 10) ** 3;
const psiKpa = (poundKg * standardGravity) / (inchMm / 1000) ** 2 / 1000;
const poundFootNm = poundKg * standardGravity * 0.3048;

/**
 * Units of the bench with their exact factors.
 * Source: NIST SP 811, appendix B: inch 25.4 mm, pound 0.45359237 kg, standard gravity 9.80665 m/s2, US gallon 231 in3;
 * everything else follows from these. The inch of mercury is the conventional one (0 degC, 13595.1 kg/m3).
 */
export const units: readonly Unit[] = [
  { symbol: 'mm', dimension: 'length', factor: 1, system: 'metric' },
  { symbol: 'µm', dimension: 'length', factor: 0.001, system: 'metric', typed: ['um', 'μm', 'micron', 'microns'] },
  { symbol: 'cm', dimension: 'length', factor: 10, system: 'metric' },
  { symbol: 'm', dimension: 'length', factor: 1000, system: 'metric' },
  {
    symbol: 'in',
    dimension: 'length',
    factor: inchMm,
    system: 'us',
    typed: ['"', '″', '”', 'inch', 'inches', 'in.'],
  },
  { symbol: 'ft', dimension: 'length', factor: 12 * inchMm, system: 'us', typed: ["'", '′', 'feet', 'foot'] },
  { symbol: 'mm²', dimension: 'area', factor: 1, system: 'metric', typed: ['mm2', 'sq mm'] },
  { symbol: 'cm²', dimension: 'area', factor: 100, system: 'metric', typed: ['cm2', 'sq cm'] },
  { symbol: 'in²', dimension: 'area', factor: inchMm ** 2, system: 'us', typed: ['in2', 'sq in'] },
  { symbol: 'mL', dimension: 'volume', factor: 1, system: 'metric', typed: ['ml', 'cc', 'cm3', 'cm³'] },
  { symbol: 'L', dimension: 'volume', factor: 1000, system: 'metric', typed: ['l', 'litre', 'litres', 'liter'] },
  { symbol: 'fl oz', dimension: 'volume', factor: gallonMl / 128, system: 'us', typed: ['floz', 'oz'] },
  { symbol: 'qt', dimension: 'volume', factor: gallonMl / 4, system: 'us', typed: ['quart', 'quarts'] },
  { symbol: 'gal', dimension: 'volume', factor: gallonMl, system: 'us', typed: ['gallon', 'gallons'] },
  { symbol: 'kPa', dimension: 'pressure', factor: 1, system: 'metric' },
  { symbol: 'Pa', dimension: 'pressure', factor: 0.001, system: 'metric' },
  { symbol: 'MPa', dimension: 'pressure', factor: 1000, system: 'metric' },
  { symbol: 'bar', dimension: 'pressure', factor: 100, system: 'metric' },
  { symbol: 'mbar', dimension: 'pressure', factor: 0.1, system: 'metric' },
  { symbol: 'psi', dimension: 'pressure', factor: psiKpa, system: 'us' },
  {
    symbol: 'inHg',
    dimension: 'pressure',
    factor: (13595.1 * standardGravity * inchMm) / 1e6,
    system: 'us',
    typed: ['in hg'],
  },
  { symbol: '°C', dimension: 'temperature', factor: 1, system: 'metric', typed: ['C', 'degC', 'deg C', 'º C', 'ºC'] },
  {
    symbol: '°F',
    dimension: 'temperature',
    factor: 5 / 9,
    offset: -160 / 9,
    system: 'us',
    typed: ['F', 'degF', 'deg F', 'ºF'],
  },
  { symbol: 's', dimension: 'time', factor: 1, system: 'both', typed: ['sec', 'second', 'seconds'] },
  { symbol: 'min', dimension: 'time', factor: 60, system: 'both', typed: ['minute', 'minutes', 'mins'] },
  { symbol: 'h', dimension: 'time', factor: 3600, system: 'both', typed: ['hr', 'hrs', 'hour', 'hours'] },
  { symbol: 'N·m', dimension: 'torque', factor: 1, system: 'metric', typed: ['Nm', 'N m', 'N.m', 'N*m'] },
  {
    symbol: 'lbf·ft',
    dimension: 'torque',
    factor: poundFootNm,
    system: 'us',
    typed: ['lbf ft', 'lb ft', 'ft lb', 'ft-lb', 'ft lbs', 'ft·lb', 'lb-ft', 'ftlb'],
  },
  {
    symbol: 'lbf·in',
    dimension: 'torque',
    factor: poundFootNm / 12,
    system: 'us',
    typed: ['lbf in', 'in lb', 'in-lb', 'lb in'],
  },
  { symbol: '°', dimension: 'angle', factor: 1, system: 'both', typed: ['deg', 'degrees', 'º'], closeUp: true },
  { symbol: 'V', dimension: 'voltage', factor: 1, system: 'both', typed: ['volt', 'volts'] },
  { symbol: 'mV', dimension: 'voltage', factor: 0.001, system: 'both' },
  { symbol: 'A', dimension: 'current', factor: 1, system: 'both', typed: ['amp', 'amps'] },
  { symbol: 'mΩ', dimension: 'resistance', factor: 1, system: 'both', typed: ['mohm', 'milliohm', 'mΩ'] },
  { symbol: 'Ω', dimension: 'resistance', factor: 1000, system: 'both', typed: ['ohm', 'ohms', 'Ω'] },
  { symbol: 'km/h', dimension: 'speed', factor: 1, system: 'metric', typed: ['kph', 'kmh'] },
  { symbol: 'mph', dimension: 'speed', factor: 1.609344, system: 'us' },
  { symbol: 'm/s²', dimension: 'acceleration', factor: 1, system: 'metric', typed: ['m/s2'] },
  { symbol: 'ft/s²', dimension: 'acceleration', factor: 0.3048, system: 'us', typed: ['ft/s2'] },
  { symbol: '%', dimension: 'share', factor: 1, system: 'both', typed: ['percent', 'pct'] },
  { symbol: 'rpm', dimension: 'turning speed', factor: 1, system: 'both', typed: ['r/min', '1/min'] },
  { symbol: 'drops/min', dimension: 'drops', factor: 1, system: 'both', typed: ['drops per min', 'drop/min'] },
  { symbol: 'kg', dimension: 'mass', factor: 1, system: 'metric' },
  { symbol: 'lb', dimension: 'mass', factor: poundKg, system: 'us', typed: ['lbs', 'pound', 'pounds'] },
  { symbol: 'mL/min', dimension: 'flow', factor: 1, system: 'metric', typed: ['ml/min', 'cc/min'] },
  { symbol: 'mL/h', dimension: 'flow', factor: 1 / 60, system: 'metric', typed: ['ml/h', 'mL/hr', 'ml/hr'] },
  { symbol: 'L/min', dimension: 'flow', factor: 1000, system: 'metric', typed: ['l/min'] },
  { symbol: 'gal/min', dimension: 'flow', factor: gallonMl, system: 'us', typed: ['gpm'] },
  { symbol: 'fl oz/min', dimension: 'flow', factor: gallonMl / 128, system: 'us', typed: ['oz/min'] },
  { symbol: 'fl oz/h', dimension: 'flow', factor: gallonMl / 128 / 60, system: 'us', typed: ['oz/h', 'oz/hr'] },
  { symbol: 'mm per 10 min', typed: ['mm/10 min'], dimension: 'drift', factor: 1, system: 'metric' },
  { symbol: 'in per 10 min', typed: ['in/10 min'], dimension: 'drift', factor: inchMm, system: 'us' },
  { symbol: 'mm per 100 h', typed: ['mm/100 h'], dimension: 'growth', factor: 1, system: 'metric' },
  { symbol: 'in per 100 h', typed: ['in/100 h'], dimension: 'growth', factor: inchMm, system: 'us' },
  { symbol: 'years', dimension: 'age', factor: 1, system: 'both', typed: ['year', 'yr', 'yrs', 'y', 'a'] },
];

const exact = new Map(units.flatMap((unit) => [unit.symbol, ...(unit.typed ?? [])].map((text) => [text, unit])));
const caseless = new Map(
  units.flatMap((unit) => [unit.symbol, ...(unit.typed ?? [])].map((text) => [text.toLowerCase(), unit])),
);
/** Read only as written: `mpa` could be a thousand times smaller or larger. */
const caseMatters = new Set(['mpa', 'pa', 'mω', 'ω', 'm', 'a', 'mv']);

/** The unit that a text names, or null. `Nm`, `N m` and `N·m` are one; `MPa` and `mPa` are never taken for each other. */
export function unitNamed(text: string): Unit | null {
  const spelled = text.trim().normalize('NFC').replaceAll('\u2126', 'Ω').replace(/\s+/g, ' ');
  const found = exact.get(spelled);
  if (found !== undefined) return found;
  const lower = spelled.toLowerCase();
  return caseMatters.has(lower) ? null : (caseless.get(lower) ?? null);
}

/** Converts between two units of one dimension; null where they measure different things. */
export function convert(value: number, from: Unit, to: Unit): number | null {
  if (from.dimension !== to.dimension) return null;
  if (from === to) return value;
  return (value * from.factor + (from.offset ?? 0) - (to.offset ?? 0)) / to.factor;
}

/** Converts a difference or an uncertainty: no offset takes part. */
export function convertDifference(value: number, from: Unit, to: Unit): number | null {
  return from.dimension === to.dimension ? (value * from.factor) / to.factor : null;
}
