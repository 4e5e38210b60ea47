/** `npm test -- --long`: every page and every example. */
export const isLong = process.env.LONG === '1'

/** How many examples a property is tried on: a sample as a rule, many in a long run. */
export const runs = (sample: number, many: number): number => (isLong ? many : sample)
