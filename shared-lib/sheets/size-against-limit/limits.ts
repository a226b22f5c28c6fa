/** A size of any part has no default: the limit that is typed judges it. */
export const mostSizeMm = 100_000;
