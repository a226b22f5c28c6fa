/** What each length can be off by, in mm. Source: the handbook's quantity dictionary; common practice, no source. */
export const lengthOffMm = { 'scale on the part': 0.5, 'scaled photo': 1 } as const;
