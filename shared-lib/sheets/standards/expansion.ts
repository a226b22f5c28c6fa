/**
 * Linear expansion for each kelvin. Source: handbook figures, common practice; a materials textbook gives 10.8 to 11.4
 * for grey iron, 11.3 to 12.3 for carbon steel and 21.5 for cast aluminium, all 1e-6.
 */
export const expansionPerKelvin = { iron: 11e-6, aluminium: 22e-6, steel: 11.5e-6 } as const;
export type Metal = keyof typeof expansionPerKelvin;
export const metals = Object.keys(expansionPerKelvin) as readonly Metal[];

/**
 * A size brought to 20 °C, the reference temperature of lengths.
 *
 * Source: ISO 1 for the temperature.
 */
export const at20C = (sizeMm: number, temperatureC: number, metal: Metal): number =>
  sizeMm * (1 - expansionPerKelvin[metal] * (temperatureC - 20));

export const metalNamed = (word: string | null): Metal | null => metals.find((metal) => metal === word) ?? null;
