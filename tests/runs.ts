/** How many examples a property is tried on: a sample as a rule, many with `LONG=1`. */
export const runs = (sample: number, many: number): number => (process.env.LONG === '1' ? many : sample)
