/** n1 to n10 of IAPWS-IF97, region 4 (IAPWS R7-97(2012), table 34). */
const n = [
  0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.1202082470247e5, -0.32325550322333e7,
  0.1491510861353e2, -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3,
] as const;

/**
 * Pressure at which water boils at a temperature.
 *
 * @param temperatureK  273.15 to 647.096 K
 * @returns  MPa; NaN outside the range
 * Source: IAPWS-IF97 region 4, equation 30 (IAPWS R7-97(2012)).
 * @example saturationPressureMpa(300) // 0.00353658941
 */
export function saturationPressureMpa(temperatureK: number): number {
  if (!(temperatureK >= 273.15 && temperatureK <= 647.096)) return Number.NaN;
  const theta = temperatureK + n[8] / (temperatureK - n[9]);
  const a = theta ** 2 + n[0] * theta + n[1];
  const b = n[2] * theta ** 2 + n[3] * theta + n[4];
  const c = n[5] * theta ** 2 + n[6] * theta + n[7];
  return ((2 * c) / (-b + Math.sqrt(b ** 2 - 4 * a * c))) ** 4;
}

/**
 * Temperature at which water boils under a pressure.
 *
 * @param pressureMpa  absolute, 0.000611213 to 22.064 MPa
 * @returns  K; NaN outside the range
 * Source: IAPWS-IF97 region 4, equation 31 (IAPWS R7-97(2012)).
 * @example saturationTemperatureK(0.1) // 372.755919
 */
export function saturationTemperatureK(pressureMpa: number): number {
  if (!(pressureMpa >= 0.000611213 && pressureMpa <= 22.064)) return Number.NaN;
  const beta = pressureMpa ** 0.25;
  const e = beta ** 2 + n[2] * beta + n[5];
  const f = n[0] * beta ** 2 + n[3] * beta + n[6];
  const g = n[1] * beta ** 2 + n[4] * beta + n[7];
  const d = (2 * g) / (-f - Math.sqrt(f ** 2 - 4 * e * g));
  return (n[9] + d - Math.sqrt((n[9] + d) ** 2 - 4 * (n[8] + n[9] * d))) / 2;
}
