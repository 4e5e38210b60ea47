// npm run -s growdown -- <command>: bundles what has changed, then is the program.
import { bundle } from './bundle.mjs'

await bundle()
await import('../dist/cli.js')
