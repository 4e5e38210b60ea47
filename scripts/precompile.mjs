// Templates to JavaScript, once when the program is bundled: no build parses or compiles one.
// Handlebars' strict mode minds the names that a template prints. Here it minds the names that a template hands to helpers
// and blocks as well: `{{#each visitz}}` is an error, where Handlebars would show nothing.
import Handlebars from 'handlebars'

const knownHelpers = Object.fromEntries(
  [
    'figure',
    'drawing',
    'sparkline',
    'stageKey',
    'table',
    'feetTable',
    'readings',
    'markdown',
    'eq',
    'join',
    'json',
  ].map((name) => [name, true]),
)

/** Parses a template and marks every path that is an argument as one that must be there; null and false are there. */
function parseStrictly(source) {
  const program = Handlebars.parse(source)
  new Arguments().accept(program)
  return program
}

class Arguments extends Handlebars.Visitor {
  MustacheStatement(statement) {
    watch(statement)
    super.MustacheStatement(statement)
  }

  BlockStatement(statement) {
    watch(statement)
    super.BlockStatement(statement)
  }

  SubExpression(expression) {
    watch(expression)
    super.SubExpression(expression)
  }
}

/** The compiler reads this mark of a path. */
function watch({ params, hash }) {
  for (const param of [...params, ...(hash?.pairs ?? []).map(({ value }) => value)]) {
    if (param.type === 'PathExpression') param.strict = true
  }
}

/** A CommonJS module of compiled templates by path, from their texts by path. */
export function precompile(sources) {
  const entries = [...sources].map(([path, source]) => {
    const compiled = Handlebars.precompile(parseStrictly(source), {
      strict: true,
      preventIndent: true,
      knownHelpers,
      knownHelpersOnly: true,
    })
    return `${JSON.stringify(path)}: ${compiled}`
  })
  return `module.exports = {\n${entries.join(',\n')}\n}\n`
}
