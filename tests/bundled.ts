import { execFileSync } from 'node:child_process'

/** Tests that start the program as a person does need it bundled; a fresh bundle is left as it is. */
export default function setup(): void {
  execFileSync(process.execPath, ['scripts/bundle.mjs'], { stdio: ['ignore', 'ignore', 'inherit'] })
}
