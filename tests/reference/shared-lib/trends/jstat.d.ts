/** The functions of jStat that the checks use; the library has no types of its own. */
declare module 'jstat' {
  const jstat: {
    readonly normal: {
      readonly cdf: (x: number, mean: number, deviation: number) => number;
      readonly inv: (p: number, mean: number, deviation: number) => number;
    };
    readonly studentt: { readonly inv: (p: number, degreesOfFreedom: number) => number };
  };
  export default jstat;
}
