/** A large shop's floor opens as fast as a small one's; the rest is one press, or a word in the search, away. */
export const machinesAtFirst = 60;
