declare module 'fmin/src/bisect.js' {
  /** Zero of f between a and b, where its signs differ; tolerance is of x. */
  export function bisect(
    f: (x: number) => number,
    a: number,
    b: number,
    parameters?: { maxIterations?: number; tolerance?: number },
  ): number;
}
