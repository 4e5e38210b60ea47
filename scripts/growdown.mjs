// npm run -s growdown -- <command>: bundles what has changed, then is the program.
import { bundle } from './bundle.mjs'

await bundle()
// npm goes to the checkout before it runs a script; the person, and the casebook, may be elsewhere.
const calledFrom = process.env.npm_lifecycle_event === 'growdown' ? process.env.INIT_CWD : undefined
if (calledFrom) process.chdir(calledFrom)
await import('../dist/cli.js')
