/** The two quantiles that are used as a second witness; the package carries no types. */
declare module 'jstat' {
  const jstat: {
    readonly studentt: { inv(p: number, dof: number): number }
    readonly normal: { inv(p: number, mean: number, sd: number): number }
  }
  export default jstat
}
