/** A trend has no default: the limit that is typed ends it. */
export const confidence = 0.95;
/** More than this in a day is asked about: there are 24 hours in it. */
export const hoursInADay = 24;
