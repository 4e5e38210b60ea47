/** The four feet, in the order in which a list of four readings is written unless the case file sets another. */
export const feet = ['LF', 'RF', 'LH', 'RH'] as const
export type Foot = (typeof feet)[number]
export type PerFoot<T> = Partial<Record<Foot, T>>

export type Side = 'left' | 'right'
export type Pair = 'fore' | 'hind'
export const pairs: readonly Pair[] = ['fore', 'hind']

export const sideOf = (foot: Foot): Side => (foot[0] === 'L' ? 'left' : 'right')
export const pairOf = (foot: Foot): Pair => (foot[1] === 'F' ? 'fore' : 'hind')

/** Left and right foot of a pair. */
export const feetOf = (pair: Pair): readonly [Foot, Foot] => (pair === 'fore' ? ['LF', 'RF'] : ['LH', 'RH'])
