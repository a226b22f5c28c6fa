/** What a pass cannot rule out. Source: the handbook; common practice, no source. */
export const passDoesNotRuleOut = [
  'a leak that closes when cold or at idle',
  'a shut thermostat, so that no gas reaches the neck',
  'a leak that opens only under boost or load',
  'a leak below the rings at top dead centre, as a hole in a liner or a lower seal',
  'a vented system or a plugged sampler',
  'a diesel’s excess air thinning the gas',
  'tired test fluid',
  'a leak of coolant into oil without a path for gas',
] as const;

export const falsePositives = 'exhaust fumes near the sampler, old fluid, or coolant splashed in';
