/** Water at 82 to 93 °C and air at 550 to 690 kPa. Source: US Army TM (80 to 100 psi, 180 to 200 °F), as quoted in public texts. */
export const usualTestKpa = [200, 700] as const;
export const usualTestC = [60, 95] as const;
/** Shorter tests miss slow leaks. Common practice, no source. */
export const shortestMinutes = 10;
