// npm test: installs what is missing, then runs every check and says how many passed.
// npm test -- --long: the same with every page and every example, where the short run takes a sample.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { attempt, install, root } from './install.mjs'

if (process.argv.includes('--long')) process.env.LONG = '1'
process.chdir(root)
install()

const tool = (name) => join('node_modules', '.bin', name)
const folder = mkdtempSync(join(tmpdir(), 'growdown-test-'))
const report = join(folder, 'report.json')

const checks = [
  ['types', 'tsc', ['--noEmit']],
  ['lint', 'biome', ['check', '.']],
  ['unused code', 'knip', []],
]
const results = checks.map(([name, command, args]) => {
  console.log(`\n== ${name}`)
  return { name, passed: attempt(tool(command), args) === 0 ? 1 : 0 }
})
for (const result of results) result.failed = 1 - result.passed

console.log('\n== tests: unit, reference, browser')
const status = attempt(tool('vitest'), [
  'run',
  '--reporter=default',
  '--reporter=json',
  `--outputFile.json=${report}`,
])
results.push({ name: 'tests', ...counted(report, status) })
rmSync(folder, { recursive: true, force: true })

console.log('')
for (const { name, passed, failed } of results) {
  console.log(
    `${failed === 0 ? 'ok    ' : 'FAILED'} ${name}${passed + failed > 1 ? `: ${passed} of ${passed + failed} passed` : ''}`,
  )
}
const total = (key) => results.reduce((sum, result) => sum + result[key], 0)
console.log(`${total('passed')} passed, ${total('failed')} failed`)
process.exitCode = total('failed') === 0 && total('passed') > 0 ? 0 : 1

/** What the test run counted. A file that could not run at all counts as one failure. */
function counted(path, exitStatus) {
  let run
  try {
    run = JSON.parse(readFileSync(path, 'utf8'))
  } catch {
    return { passed: 0, failed: 1 }
  }
  const broken = run.testResults.filter(
    (file) => file.status === 'failed' && file.assertionResults.length === 0,
  )
  const failed = run.numFailedTests + broken.length
  return { passed: run.numPassedTests, failed: failed === 0 && exitStatus !== 0 ? 1 : failed }
}
