/**
 * How V8 works while every processor makes pages. Left alone it gives a third of their time to threads of its own: it
 * optimises functions over and over, whose closures die with each page, and sweeps beside the work. Measured on a cold
 * build of 100 horses, two threads on two cores, Node 20.20, seven pairs in turn: without these flags it takes 1.43
 * times as long (1.30 to 1.79) and 1.39 times the processor time, at the same peak of memory.
 */
import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'

const flags = [
  // A function has to run long before it is optimised, and then takes in fewer others.
  '--interrupt-budget=1000000',
  '--max-inlined-bytecode-size-cumulative=500',
  '--no-concurrent-marking',
  '--no-parallel-scavenge',
]

/** Node 24 came with a V8 that lets garbage lie longer. */
const liesLonger = Number(process.versions.node.split('.')[0]) >= 24

/**
 * What a worker may hold, MiB. 1,000 horses, two workers: 440 to 480 MiB in all on Node 20 (five runs), 413 on 22
 * (42 s), 432 on 24 (44 s). Horses of 200 visits fit.
 */
export const threadLimits = {
  maxOldGenerationSizeMb: liesLonger ? 120 : 160,
  maxYoungGenerationSizeMb: 48,
}

/** What a worker may hold that has one job alone, for which the usual was too little. */
export const loneThreadLimits = { ...threadLimits, maxOldGenerationSizeMb: 640 }

/** Sets the whole process up, for as long as it runs. */
export function tuneForFullLoad(): void {
  for (const flag of [...flags, '--expose-gc']) setFlagsFromString(flag)
}

/**
 * Has V8 collect in this thread, once the process is set up, and give back what it no longer needs. To the end it would
 * else hold what came before: after learning from 1,000 horses 80 MiB in the thread that hands out. Without this the whole
 * took 530 MiB on Node 22 and 600 on 24.
 */
export function collectGarbage(): void {
  const collect: (how: object) => void = runInNewContext('gc')
  collect({ type: 'major', flavor: 'last-resort' })
}
