/** What is used of the package as a second witness; it carries no types. */
declare module 'jstat' {
  interface Distributions {
    readonly studentt: { inv(p: number, dof: number): number }
    readonly normal: { inv(p: number, mean: number, sd: number): number }
    readonly binomial: {
      cdf(k: number, n: number, p: number): number
      pdf(k: number, n: number, p: number): number
    }
  }
  const jstat: Distributions & { readonly jStat: Distributions }
  export const jStat: Distributions
  export default jstat
}
