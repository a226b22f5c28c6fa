/** Reasons that one tap gives for a reading that is not there: common practice, no source. */
export const notTakenReasons = [
  'no tool',
  'no access',
  'not safe',
  'engine does not run',
  'conditions not met',
  'not authorised by owner',
] as const;
