/** The one function of jStat the checks use; the library has no types of its own. */
declare module 'jstat' {
  const jstat: { readonly studentt: { readonly inv: (p: number, degreesOfFreedom: number) => number } };
  export default jstat;
}
