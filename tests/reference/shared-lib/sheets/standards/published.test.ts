import { describe, expect, it } from 'vitest';
import { chargeByGravity, chargeByVolts } from '../../../../../shared-lib/sheets/battery-at-rest/limits.ts';
import { leastVoltsByFahrenheit } from '../../../../../shared-lib/sheets/battery-under-load/limits.ts';
import { ruleOfThumbOffC } from '../../../../../shared-lib/sheets/boiling-margin/compute.ts';
import { publishedBand } from '../../../../../shared-lib/sheets/charging/limits.ts';
import {
  handbookPressureKpa,
  standardPressureKpa,
  standardTemperatureC,
} from '../../../../../shared-lib/sheets/standards/atmosphere.ts';
import {
  coolantBoilsC,
  handbookCoolantBoilsC,
  waterMoleFraction,
} from '../../../../../shared-lib/sheets/standards/coolant-boiling.ts';
import {
  copperResistanceMohm,
  wireAreaMm2,
  wireDiameterMm,
} from '../../../../../shared-lib/sheets/standards/copper-cable.ts';
import { at20C } from '../../../../../shared-lib/sheets/standards/expansion.ts';
import { lookUp } from '../../../../../shared-lib/sheets/standards/lookup.ts';
import {
  saturationPressureMpa,
  saturationTemperatureK,
} from '../../../../../shared-lib/sheets/standards/water-saturation.ts';

const kpaPerPsi = 6.894757293168361;
const kpaPerInHg = 3.386388666666667;
const fahrenheit = (celsius: number): number => celsius * 1.8 + 32;

function near(actual: number | null, expected: number, tolerance: number): void {
  expect(Math.abs((actual ?? Number.NaN) - expected)).toBeLessThanOrEqual(tolerance);
}

describe('water by IAPWS-IF97 region 4', () => {
  // IAPWS R7-97(2012), table 36, to the digits it prints; the row of 1 MPa is from memory.
  it.each([
    [0.1, 372.755919],
    [1, 453.035632],
    [10, 584.149488],
  ])('boils under %d MPa at %d K', (mpa, kelvin) => near(saturationTemperatureK(mpa), kelvin, 5e-7));

  // IAPWS R7-97(2012), table 35, nine digits; the row of 500 K is from memory.
  it.each([
    [300, 0.00353658941, 5e-12],
    [500, 2.63889776, 5e-9],
    [600, 12.3443146, 5e-8],
  ])('at %d K has a vapour pressure of %d MPa', (kelvin, mpa, tolerance) =>
    near(saturationPressureMpa(kelvin), mpa, tolerance),
  );

  it('boils at 99.974 °C under one atmosphere: the 1990 scale, not 100', () =>
    near(saturationTemperatureK(0.101325) - 273.15, 99.974, 0.001));

  // Recomputed by an independent IF97 library; gauge psi at sea level, °F.
  it.each([
    [0, 211.95],
    [1, 215.29],
    [2, 218.46],
    [3, 221.47],
    [4, 224.35],
    [5, 227.1],
    [6, 229.74],
    [8, 234.72],
    [10, 239.36],
    [12, 243.69],
    [13, 245.76],
    [14, 247.77],
    [16, 251.62],
    [18, 255.27],
    [20, 258.74],
  ])('under %d psi over sea level boils at %d °F', (psi, f) =>
    near(fahrenheit(coolantBoilsC(101.325 + psi * kpaPerPsi, 0)), f, 0.02),
  );

  // Classic saturated-steam table (Keenan and Keyes): an older temperature scale, hence 0.1 °F.
  it.each([
    [5, 162.24],
    [20, 227.96],
    [25, 240.07],
    [35, 259.28],
  ])('under %d psi absolute boils at %d °F', (psia, f) => near(fahrenheit(coolantBoilsC(psia * kpaPerPsi, 0)), f, 0.1));

  // Public saturated-steam table in whole degrees, gauge psi.
  it.each([
    [5, 227],
    [16, 252],
    [20, 259],
  ])('under %d psi of gauge boils at %d °F to the whole degree', (psi, f) =>
    near(fahrenheit(coolantBoilsC(101.325 + psi * kpaPerPsi, 0)), f, 1),
  );

  it.each([
    [212, 14.709],
    [250, 29.843],
  ])('at %d °F has %d psi absolute', (f, psia) =>
    near((saturationPressureMpa((f - 32) / 1.8 + 273.15) * 1000) / kpaPerPsi, psia, 0.003),
  );

  it('says nothing outside the range of the standard', () => {
    expect(saturationTemperatureK(1e-5)).toBeNaN();
    expect(saturationTemperatureK(23)).toBeNaN();
    expect(saturationPressureMpa(700)).toBeNaN();
  });

  // The rule of 3 °F a psi against IF97, recomputed by an independent library.
  it.each([
    [2, -0.51],
    [3, -0.52],
    [6, 0.21],
    [7, 0.67],
    [10, 2.6],
    [14, 6.19],
    [16, 8.34],
    [20, 13.21],
  ])('the rule of 3 °F a psi is off by this at %d psi: %d °F', (psi, off) =>
    near(ruleOfThumbOffC(psi * kpaPerPsi) * 1.8, off, 0.06),
  );
});

describe('air by the US Standard Atmosphere 1976', () => {
  // Printed altitude tables, inches of mercury.
  it.each([
    [1000, 28.86],
    [3000, 26.82],
    [5000, 24.89],
  ])('%d ft has %d inHg', (feet, inHg) => near(standardPressureKpa(feet * 0.3048) / kpaPerInHg, inHg, 0.01));

  it('5000 ft has 12.228 psi', () => near(standardPressureKpa(1524) / kpaPerPsi, 12.228, 0.001));
  it('5000 ft is 41.17 °F', () => near(fahrenheit(standardTemperatureC(1524)), 41.17, 0.01));
  it('the next layer begins at 22.6321 kPa', () => near(standardPressureKpa(11_000), 22.6321, 0.0005));

  it.each([
    [0, 101.325, 0],
    [2000, 79.495, 0.01],
    [3000, 70.109, 0.01],
    [304.8, 97.717, 0.01],
    [2438.4, 75.262, 0.01],
  ])('%d m has %d kPa', (metres, kpa, tolerance) => near(standardPressureKpa(metres), kpa, tolerance));

  // The handbook's own figures for its rounded formula; common practice, no source.
  it.each([
    [0, 101.3],
    [500, 95.5],
    [1000, 89.9],
    [1500, 84.6],
    [2000, 79.5],
  ])('the handbook’s rounded form gives %d m as %d kPa', (metres, kpa) => near(handbookPressureKpa(metres), kpa, 0.06));
});

describe('coolant of ethylene glycol', () => {
  it.each([
    // US Army TM 5-3895-382-24, °C at sea level.
    [0, 0, 0, 99.974, 0.1],
    [40, 0, 0, 106, 1],
    [60, 0, 0, 111, 1],
    // Commonly published, 219 and 232 °F.
    [30, 0, 0, (219 - 32) / 1.8, 1.5 / 1.8],
    [60, 0, 0, (232 - 32) / 1.8, 1.5 / 1.8],
    // Raoult with IF97 and the standard atmosphere, recomputed independently: 258.1 °F.
    [50, 15, 2438.4, (258.1 - 32) / 1.8, 1 / 1.8],
    // Plain water: 197.33, 244.80 and 222.12 °F at altitude, recomputed independently.
    [0, 0, 2438.4, (197.33 - 32) / 1.8, 0.03 / 1.8],
    [0, 15, 1524, (244.8 - 32) / 1.8, 0.03 / 1.8],
    [0, 7, 2438.4, (222.12 - 32) / 1.8, 0.03 / 1.8],
  ])('%d %% under %d psi at %d m boils at %d °C', (percent, psi, metres, celsius, tolerance) =>
    near(coolantBoilsC(standardPressureKpa(metres) + psi * kpaPerPsi, percent / 100), celsius, tolerance),
  );

  // The handbook's mole fractions and boiling points by its approximation; common practice, no source.
  it.each([
    [0, 1],
    [0.33, 0.8625],
    [0.5, 0.7555],
    [0.6, 0.673],
  ])('glycol %d has a mole fraction of water of %d', (share, fraction) =>
    near(waterMoleFraction(share), fraction, 0.0006),
  );
  it.each([
    [0, 0, 100],
    [0.5, 0, 108.2],
    [0.5, 50, 120.5],
    [0.5, 90, 128],
  ])('the handbook’s approximation: glycol %d under %d kPa boils at %d °C', (share, kpa, celsius) =>
    near(handbookCoolantBoilsC(101.325 + kpa, share), celsius, 0.06),
  );
});

describe('copper cable', () => {
  // ASTM B258, inches.
  it.each([
    ['4/0', 0.46],
    ['1/0', 0.3249],
    ['4', 0.2043],
  ])('gauge %s is %d in thick', (gauge, inches) => near((wireDiameterMm(gauge) ?? Number.NaN) / 25.4, inches, 0.0001));

  it('each gauge is 1.1229322 times the next', () =>
    near((wireDiameterMm('9') ?? Number.NaN) / (wireDiameterMm('10') ?? Number.NaN), 1.1229322, 5e-8));

  const ohmPer1000Feet = (gauge: string, celsius: number) =>
    copperResistanceMohm(304.8, wireAreaMm2(gauge) ?? Number.NaN, celsius) / 1000;

  // 100 % IACS copper, 20 °C, Ω in 1000 ft.
  it.each([
    ['2/0', 0.0779],
    ['4', 0.2485],
  ])('gauge %s has %d Ω in 1000 ft at 20 °C', (gauge, ohm) => near(ohmPer1000Feet(gauge, 20), ohm, 0.0006));

  // NFPA 70, chapter 9, table 8: stranded, uncoated, 75 °C; 3 % for the lay of the strands.
  it.each([
    ['4/0', 0.0608],
    ['1', 0.154],
    ['4', 0.308],
  ])('gauge %s has %d Ω in 1000 ft at 75 °C, within 3 %', (gauge, ohm) =>
    near(ohmPer1000Feet(gauge, 75), ohm, 0.03 * ohm),
  );

  it('from 20 to 75 °C rises 1.2162 times', () =>
    near(copperResistanceMohm(1, 1, 75) / copperResistanceMohm(1, 1, 20), 1.2162, 0.0002));

  it.each([
    ['2/0', 6, 400, 0.187],
    ['4/0', 10, 600, 0.294],
  ])('gauge %s, %d ft, %d A loses %d V', (gauge, feet, amps, volts) =>
    near((copperResistanceMohm(feet * 0.3048, wireAreaMm2(gauge) ?? Number.NaN, 20) * amps) / 1000, volts, 0.003),
  );

  it('knows no gauge 5/0 or 41', () => {
    expect(wireDiameterMm('5/0')).toBeNull();
    expect(wireDiameterMm('41')).toBeNull();
    expect(wireDiameterMm('abc')).toBeNull();
  });
});

describe('battery and charging tables', () => {
  // Table at 80 °F in wide public use; tolerance as published.
  it.each([
    [12.65, 100],
    [12.45, 75],
    [12.24, 50],
    [12.06, 25],
    [11.89, 0],
  ])('%d V at rest is %d %%', (volts, percent) => near(lookUp(chargeByVolts, volts), percent, 1e-9));
  // US Army TM 5-4210-230-14&P, table 2.
  it.each([
    [1.265, 100],
    [1.225, 75],
    [1.155, 25],
    [1.12, 0],
  ])('a gravity of %d is %d %%', (gravity, percent) => near(lookUp(chargeByGravity, gravity), percent, 1e-9));
  // US Army TM 5-4210-230-14&P, table 5.
  it.each([
    [70, 9.6],
    [60, 9.5],
    [50, 9.4],
    [40, 9.3],
    [30, 9.1],
    [20, 8.9],
    [10, 8.7],
    [0, 8.5],
    [90, 9.6],
  ])('at %d °F a loaded battery keeps %d V', (f, volts) => near(lookUp(leastVoltsByFahrenheit, f), volts, 1e-9));
  // US Army TM 9-6115-464-12, table 4-5, 24 V; half of it for 12 V.
  it.each([
    [0, 24, 29.2, 30.12],
    [40, 24, 28.64, 29.36],
    [80, 24, 28, 28.6],
    [120, 24, 27.32, 28.04],
    [80, 12, 14, 14.3],
    [120, 12, 13.66, 14.02],
  ])('at %d °F a regulator of %d V keeps %d to %d V', (f, system, low, high) => {
    const band = publishedBand((f - 32) / 1.8, system);
    near(band.low, low, 0.005);
    near(band.high, high, 0.005);
  });
  it('moves −14.9 mV for each kelvin and 12 V', () => {
    const middle = (f: number) => {
      const { low, high } = publishedBand((f - 32) / 1.8, 12);
      return (low + high) / 2;
    };
    near(((middle(120) - middle(0)) / (120 / 1.8)) * 1000, -14.9, 0.5);
  });
});

describe('expansion', () => {
  // Grey iron of 11.4e-6 grows 0.1186 mm over 130 mm and 80 K by a materials textbook; the handbook's 11e-6 stays within 5 %.
  it('an iron bore of 130 mm 80 K warm is 0.114 mm too large', () =>
    near(130 - at20C(130, 100, 'iron'), 0.1186, 0.05 * 0.1186));
  // Worked by hand in the handbook; common practice, no source.
  it.each([
    [100.071, 10, 'iron', 100.082],
    [99.88, 25, 'aluminium', 99.869],
  ] as const)('%d mm at %d °C of %s is %d mm at 20 °C', (size, celsius, metal, expected) =>
    near(at20C(size, celsius, metal), expected, 0.0005),
  );
});
