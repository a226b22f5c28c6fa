/** Resistivity of annealed copper at 20 °C, Ω·mm²/m, and its rise with temperature. Source: 100 % IACS. */
const resistivityAt20C = 0.017241;
const risePerKelvin = 0.00393;

/**
 * Diameter of a solid wire by its gauge number.
 *
 * @param gauge  `4` or `2/0`; from 4/0 to 40
 * @returns  mm, or null for a text that is no gauge
 * Source: ASTM B258: 0.005 in at 36, 0.46 in at 4/0, in equal ratios of 92^(1/39) between.
 * @example wireDiameterMm('4/0') // 11.684
 */
export function wireDiameterMm(gauge: string): number | null {
  const number = gaugeNumber(gauge);
  return number === null ? null : 0.127 * 92 ** ((36 - number) / 39);
}

/** Metal cross-section of a solid wire of that gauge, mm². */
export function wireAreaMm2(gauge: string): number | null {
  const diameterMm = wireDiameterMm(gauge);
  return diameterMm === null ? null : (Math.PI * diameterMm ** 2) / 4;
}

function gaugeNumber(gauge: string): number | null {
  const text = gauge
    .trim()
    .replace(/\s*(awg|ga|gauge)\.?$/i, '')
    .trim();
  const naught = /^([1-4])\/0$/.exec(text)?.[1] ?? /^(0{1,4})$/.exec(text)?.[1]?.length;
  if (naught !== undefined) return 1 - Number(naught);
  if (!/^\d{1,2}$/.test(text)) return null;
  const number = Number(text);
  return number >= 1 && number <= 40 ? number : null;
}

/**
 * Resistance of a copper conductor, one way.
 *
 * @param lengthM       metres
 * @param areaMm2       metal cross-section, mm²
 * @param temperatureC  of the copper; the linear rule holds from about −50 to 150 °C
 * @returns  mΩ. A stranded cable is about 2 % above the solid wire of the same gauge.
 * Source: R = ρL/A with 100 % IACS copper; conductor tables (NFPA 70, chapter 9, table 8) agree within 3 %.
 */
export const copperResistanceMohm = (lengthM: number, areaMm2: number, temperatureC: number): number =>
  ((1000 * resistivityAt20C * lengthM) / areaMm2) * (1 + risePerKelvin * (temperatureC - 20));

/** The handbook's rounded form: 0.0172 Ω·mm²/m at 20 °C and 0.39 % for each kelvin. */
export const handbookCopperResistanceMohm = (lengthM: number, areaMm2: number, temperatureC: number): number =>
  ((1000 * 0.0172 * lengthM) / areaMm2) * (1 + 0.0039 * (temperatureC - 20));
