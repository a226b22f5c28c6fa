import { saturationTemperatureK } from './water-saturation.ts';

interface GlycolFigures {
  readonly waterGramsPerMl: number;
  readonly waterMolar: number;
  readonly glycolGramsPerMl: number;
  readonly glycolMolar: number;
}

/** Density at 20 °C in g/mL and molar mass in g/mol of water and ethylene glycol. */
const published: GlycolFigures = {
  waterGramsPerMl: 0.9982,
  waterMolar: 18.015,
  glycolGramsPerMl: 1.1135,
  glycolMolar: 62.068,
};
const handbook: GlycolFigures = {
  waterGramsPerMl: 0.998,
  waterMolar: 18.015,
  glycolGramsPerMl: 1.113,
  glycolMolar: 62.07,
};

/**
 * Share of the molecules that are water.
 *
 * @param glycolShare  ethylene glycol by volume, 0 to 1
 */
export function waterMoleFraction(glycolShare: number, figures: GlycolFigures = published): number {
  const water = ((1 - glycolShare) * figures.waterGramsPerMl) / figures.waterMolar;
  return water / (water + (glycolShare * figures.glycolGramsPerMl) / figures.glycolMolar);
}

/**
 * Boiling point of water with ethylene glycol: water boils when the pressure falls to its share of the molecules (Raoult).
 *
 * @param absoluteKpa  1 to 1000 kPa
 * @param glycolShare  by volume, 0 to 0.7; glycol's own vapour is neglected (about 1 kPa at most)
 * @returns  °C
 * Source: IAPWS-IF97 region 4 at the pressure over the water's mole fraction. Reproduces published boiling points of
 * coolant (US Army TM 5-3895-382-24, other public tables) within 1 °F.
 */
export const coolantBoilsC = (absoluteKpa: number, glycolShare: number): number =>
  saturationTemperatureK(absoluteKpa / 1000 / waterMoleFraction(glycolShare)) - 273.15;

/** The handbook's approximation (Clausius-Clapeyron with Raoult, within about 1 °C), common practice, no source. */
export const handbookCoolantBoilsC = (absoluteKpa: number, glycolShare: number): number =>
  1 / (1 / 373.15 - Math.log(absoluteKpa / (101.325 * waterMoleFraction(glycolShare, handbook))) / 4890.5) - 273.15;
