/** The check bar of a printed sheet: its nominal length, and what a rule may read on it and still be believed, mm. */
export const checkBar = { mm: 150, least: 140, most: 160 } as const;
