/** How much of a swept face may be marked is the maker's to say; there is no default. */
export const wholePercent = 100;
