export const seaLevelKpa = 101.325;

/** Where the standard's lowest layer ends; machines work well below. */
export const highestAltitudeM = 11_000;

/**
 * Air pressure at an altitude of the standard atmosphere.
 *
 * @param altitudeM  geopotential metres, −2000 to 11 000
 * @returns  kPa
 * Source: US Standard Atmosphere 1976, lowest layer; ISO 2533 has the same figures.
 * @example standardPressureKpa(2000) // 79.495
 */
export const standardPressureKpa = (altitudeM: number): number =>
  seaLevelKpa * (1 - (0.0065 * altitudeM) / 288.15) ** 5.255876;

/** The handbook's rounded form of the same, beside the standard. */
export const handbookPressureKpa = (altitudeM: number): number => 101.325 * (1 - 2.25577e-5 * altitudeM) ** 5.25588;

/**
 * Air temperature of the standard atmosphere.
 *
 * @param altitudeM  geopotential metres, −2000 to 11 000
 * @returns  °C
 * Source: US Standard Atmosphere 1976: 15 °C at sea level, 6.5 K less each kilometre.
 */
export const standardTemperatureC = (altitudeM: number): number => 15 - 0.0065 * altitudeM;
