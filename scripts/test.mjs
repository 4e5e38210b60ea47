// npm test: installs what is missing, then runs every check and says how many passed.
// npm test -- --long: the same with every page and every example, where the short run takes a sample.
import { spawn } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, relative } from 'node:path'
import { install, root } from './install.mjs'

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
// Beside the tests, of which some wait; what they say is kept until the tests have ended.
const checking = checks.map(([name, command, args]) => check(name, tool(command), args))

console.log('\n== tests: unit, reference, browser')
const { status } = await ended(
  started(
    tool('vitest'),
    ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`],
    'inherit',
  ),
)
const results = []
for (const { name, status: failed, said } of await Promise.all(checking)) {
  console.log(`\n== ${name}\n${said.trimEnd()}`)
  results.push({ name, passed: failed === 0 ? 1 : 0, failed: failed === 0 ? 0 : 1 })
}
const run = reported(report)
results.push({ name: 'tests', ...counted(run, status) })
rmSync(folder, { recursive: true, force: true })

// Said again at the very end, which is what is seen of a long log.
for (const failure of failures(run)) console.log(`\n${failure}`)
console.log('')
for (const { name, passed, failed } of results) {
  console.log(
    `${failed === 0 ? 'ok    ' : 'FAILED'} ${name}${passed + failed > 1 ? `: ${passed} of ${passed + failed} passed` : ''}`,
  )
}
const total = (key) => results.reduce((sum, result) => sum + result[key], 0)
console.log(`${total('passed')} passed, ${total('failed')} failed`)
process.exitCode = total('failed') === 0 && total('passed') > 0 ? 0 : 1

function started(command, args, output) {
  return spawn(command, args, { stdio: ['ignore', output, output], shell: process.platform === 'win32' })
}

function ended(child) {
  return new Promise((done) => {
    child.on('error', ({ message }) => done({ status: 1, said: `It could not be started: ${message}` }))
    child.on('close', (status) => done({ status: status ?? 1, said: '' }))
  })
}

/** Runs a program, and keeps what it says. */
async function check(name, command, args) {
  const child = started(command, args, 'pipe')
  const parts = []
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (part) => parts.push(part))
  const { status, said } = await ended(child)
  return { name, status, said: Buffer.concat(parts).toString() + said }
}

/** What the test run wrote of itself; nothing when it could not run. */
function reported(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8'))
  } catch {
    return undefined
  }
}

/** What the test run counted. A file that could not run at all counts as one failure. */
function counted(run, exitStatus) {
  if (run === undefined) return { passed: 0, failed: 1 }
  const failed = run.numFailedTests + run.testResults.filter(isBroken).length
  return { passed: run.numPassedTests, failed: failed === 0 && exitStatus !== 0 ? 1 : failed }
}

function isBroken({ status, assertionResults }) {
  return status === 'failed' && assertionResults.length === 0
}

/** Each test that failed: its file, its name and the first lines of why. */
function failures(run) {
  const told = (file, name, why) => {
    const lines = why.split('\n').slice(0, 12)
    return [`FAILED ${relative(root, file)}: ${name}`, ...lines].join('\n    ')
  }
  return (run?.testResults ?? []).flatMap((file) =>
    isBroken(file)
      ? [told(file.name, 'the file could not run', file.message)]
      : file.assertionResults
          .filter(({ status }) => status === 'failed')
          .map(({ fullName, failureMessages }) => told(file.name, fullName, failureMessages.join('\n'))),
  )
}
