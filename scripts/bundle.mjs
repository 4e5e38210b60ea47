// Bundles src/ to dist/, the browser scripts to dist/browser/, and draws icons there. Leaves a fresh bundle as it is.
import { execFileSync } from 'node:child_process'
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { dirname, join, relative } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = dirname(dirname(fileURLToPath(import.meta.url)))
const dist = join(root, 'dist')
const stamp = join(dist, '.bundled')
/** A program that started before this bundle may still load an old part, so parts are kept for a while. */
const oldPartLifetime = 60 * 60 * 1000

const inputs = [
  'src',
  'templates',
  'scripts/bundle.mjs',
  'scripts/precompile.mjs',
  'package.json',
  'package-lock.json',
]

function newest(path) {
  const stat = statSync(path)
  if (!stat.isDirectory()) return stat.mtimeMs
  return readdirSync(path).reduce((latest, name) => Math.max(latest, newest(join(path, name))), stat.mtimeMs)
}

function isFresh() {
  if (!existsSync(stamp)) return false
  const made = statSync(stamp).mtimeMs
  return inputs.every((path) => !existsSync(join(root, path)) || newest(join(root, path)) < made)
}

const browserScripts = () =>
  readdirSync(join(root, 'templates', 'scripts'))
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => join('templates', 'scripts', name))

/**
 * What gray-matter asks for and case files never reach, since it only splits them (front-matter.ts): Node's files, Node's
 * Buffer, and an old YAML reader that could also run what it reads.
 */
const inBrowser = {
  alias: { fs: './scripts/no-files.mjs' },
  inject: ['scripts/no-buffer.mjs'],
  plugins: [
    {
      name: 'no old YAML',
      setup: ({ onResolve }) =>
        onResolve({ filter: /^js-yaml$/ }, ({ importer }) =>
          /[\\/]gray-matter[\\/]/.test(importer) ? { path: join(root, 'scripts', 'no-yaml.cjs') } : undefined,
        ),
    },
  ],
}

/** What esbuild makes, in memory: nothing is written before everything has been made. */
async function make() {
  const { build } = await import('esbuild')
  const common = {
    absWorkingDir: root,
    bundle: true,
    write: false,
    target: 'es2022',
    charset: 'utf8',
    logLevel: 'error',
  }
  const program = build({
    ...common,
    entryPoints: { cli: 'src/cli.ts', worker: 'src/apps/site/worker.ts' },
    outdir: 'dist',
    chunkNames: 'parts/[name]-[hash]',
    format: 'esm',
    platform: 'node',
    // Packages go into the bundle: found file by file they take a quarter of a second at every start, and again in
    // every worker. sharp brings a binary, and libheif is under a licence of its own, so they stay outside.
    external: ['sharp', 'fs-native-extensions', 'heic-decode'],
    // Packages in the older module format look for Node's own modules with `require`.
    banner: {
      js: "import { createRequire as requireFor } from 'node:module'; const require = requireFor(import.meta.url);",
    },
    splitting: true,
  })
  const page = {
    ...common,
    ...inBrowser,
    outdir: 'dist/browser',
    format: 'iife',
    platform: 'browser',
    minify: true,
    legalComments: 'none',
    alias: {
      ...inBrowser.alias,
      '@noble/post-quantum/hybrid.js': './scripts/no-key-pairs.mjs',
      '@noble/curves/nist.js': './scripts/no-key-pairs.mjs',
      '@noble/curves/ed25519.js': './scripts/no-key-pairs.mjs',
    },
  }
  const readsCaseFiles = join('templates', 'scripts', 'yard.tsx')
  const scripts = browserScripts()
  const browser = build({
    ...page,
    entryPoints: scripts.filter((name) => name !== readsCaseFiles),
    inject: [],
  })
  const yard = build({ ...page, entryPoints: [readsCaseFiles] })
  // Whoever imports the library has its packages, and shares zod with the shape of the export.
  const library = build({
    ...common,
    entryPoints: ['src/library.ts'],
    outdir: 'dist',
    format: 'esm',
    platform: 'node',
    packages: 'external',
  })
  const libraryInBrowser = build({
    ...common,
    entryPoints: ['src/library-browser.ts'],
    outdir: 'dist',
    format: 'esm',
    platform: 'browser',
    ...inBrowser,
    minify: true,
    legalComments: 'none',
  })
  const made = await Promise.all([program, browser, yard, library, libraryInBrowser])
  const others = [await makeTemplates(), ...(await drawIcons())]
  return [...made.flatMap(({ outputFiles }) => outputFiles), ...others]
}

async function makeTemplates() {
  const { precompile } = await import('./precompile.mjs')
  const folder = join(root, 'templates')
  const names = readdirSync(folder, { recursive: true }).filter((name) => name.endsWith('.hbs'))
  const sources = names
    .sort()
    .map((name) => [
      name.replaceAll('\\', '/').slice(0, -'.hbs'.length),
      readFileSync(join(folder, name), 'utf8'),
    ])
  const { transform } = await import('esbuild')
  const { code } = await transform(precompile(sources), {
    minify: true,
    charset: 'utf8',
    legalComments: 'none',
  })
  return { path: join(dist, 'templates.cjs'), contents: code }
}

/** The drawing in the sizes that phones ask for. */
async function drawIcons() {
  const { default: sharp } = await import('sharp')
  const drawing = join(root, 'templates', 'icons', 'hoof.svg')
  return Promise.all(
    [192, 512].map(async (size) => ({
      path: join(dist, 'browser', `icon-${size}.png`),
      contents: await sharp(drawing).resize(size).png({ compressionLevel: 9, palette: true }).toBuffer(),
    })),
  )
}

/** Each file is replaced whole, so that a program starting meanwhile never reads half of one. */
function write(files) {
  for (const { path, contents } of files) {
    const part = `${path}.${process.pid}.part`
    mkdirSync(dirname(path), { recursive: true })
    writeFileSync(part, contents, { mode: relative(dist, path) === 'cli.js' ? 0o755 : 0o644 })
    renameSync(part, path)
  }
}

/** Parts of an earlier bundle go; `all` takes the recent ones as well, for a package. */
function removeOld(files, all) {
  const current = new Set(files.map(({ path }) => path))
  for (const name of readdirSync(dist, { recursive: true })) {
    const path = join(dist, name)
    if (!name.endsWith('.js') || current.has(path)) continue
    if (all || Date.now() - statSync(path).mtimeMs > oldPartLifetime) rmSync(path)
  }
}

/** The JSON Schema of the export, printed by the program itself. */
function writeSchema() {
  const schema = execFileSync(process.execPath, ['dist/cli.js', 'export', '--format', 'schema'], {
    cwd: root,
  })
  writeFileSync(join(dist, 'export.schema.json'), schema)
}

/** Declarations of the library, for whoever imports the package. */
function writeTypes() {
  rmSync(join(dist, 'types'), { recursive: true, force: true })
  execFileSync(join(root, 'node_modules', '.bin', 'tsc'), ['-p', 'tsconfig.library.json'], { cwd: root })
}

/** Makes dist/ again if anything it is made of is newer, or always for a package. */
export async function bundle({ forPackage = false } = {}) {
  if (isFresh() && !forPackage) return
  const began = new Date()
  const files = await make()
  write(files)
  removeOld(files, forPackage)
  writeSchema()
  if (forPackage) writeTypes()
  writeFileSync(stamp, '')
  utimesSync(stamp, began, began)
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await bundle({ forPackage: process.env.npm_lifecycle_event === 'prepack' })
}
