/** The longest sides of the pictures that are made of an original. */
export const thumbEdge = 360;
export const screenEdge = 2048;
