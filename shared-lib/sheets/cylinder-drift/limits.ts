/** Thermal expansion of hydraulic oil for each kelvin. Common practice, no source. */
export const oilExpansionPerKelvin = 7e-4;
