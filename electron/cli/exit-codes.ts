/** What `wm` ends with; documented in the README and in `wm --help`. */
export const exitCodes = {
  done: 0,
  /** It could not be done; the reason was printed. */
  refused: 1,
  /** The words of the command were off. */
  usage: 2,
  /** It was done in part: some files were refused, or a check found something. */
  partly: 3,
  /** Another program holds the data folder; it was named. */
  held: 4,
} as const;
