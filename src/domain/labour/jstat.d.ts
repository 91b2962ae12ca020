// jstat ships no types: these are the few functions that the project calls.
declare module 'jstat' {
  const jStat: {
    readonly beta: { inv(p: number, alpha: number, beta: number): number };
    readonly normal: {
      cdf(x: number, mean: number, sd: number): number;
      inv(p: number, mean: number, sd: number): number;
    };
  };
  export default jStat;
}
