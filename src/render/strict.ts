/**
 * Handlebars' strict mode minds the names that a template prints. This minds the names that it hands to helpers and
 * blocks as well: `{{#each visitz}}` is an error with its line, where Handlebars would show nothing.
 */
import Handlebars from 'handlebars'

/** Name of the helper that looks at an argument; templates do not write it. */
const look = 'held'

/** Parses a template and lets every path that is an argument pass through the look. */
export function parseStrictly(source: string): hbs.AST.Program {
  const program = Handlebars.parse(source)
  new Arguments().accept(program)
  return program
}

/** The helper by which an argument that is not there becomes an error; null and false are there. */
export const strictHelpers = {
  [look]: (value: unknown, name: string, line: number): unknown => {
    if (value === undefined) throw new Error(`"${name}" not defined, line ${line}`)
    return value
  },
}

interface Call {
  readonly params: hbs.AST.Expression[]
  readonly hash?: hbs.AST.Hash
}

class Arguments extends Handlebars.Visitor {
  override MustacheStatement(statement: hbs.AST.MustacheStatement): void {
    watch(statement)
    super.MustacheStatement(statement)
  }

  override BlockStatement(statement: hbs.AST.BlockStatement): void {
    watch(statement)
    super.BlockStatement(statement)
  }

  override SubExpression(expression: hbs.AST.SubExpression): void {
    if ((expression.path as hbs.AST.PathExpression).original === look) return
    watch(expression)
    super.SubExpression(expression)
  }
}

function watch({ params, hash }: Call): void {
  for (const [i, param] of params.entries()) params[i] = looked(param)
  for (const pair of hash?.pairs ?? []) pair.value = looked(pair.value)
}

/** `items` as `(held items "items" 3)`. */
function looked(argument: hbs.AST.Expression): hbs.AST.Expression {
  if (argument.type !== 'PathExpression') return argument
  const { loc } = argument
  const { original } = argument as hbs.AST.PathExpression
  const literal = (type: 'StringLiteral' | 'NumberLiteral', value: string | number) => ({
    type,
    value,
    original: value,
    loc,
  })
  const call = {
    type: 'SubExpression',
    path: { type: 'PathExpression', data: false, depth: 0, parts: [look], original: look, loc },
    params: [argument, literal('StringLiteral', original), literal('NumberLiteral', loc.start.line)],
    hash: { type: 'Hash', pairs: [], loc },
    loc,
  }
  return call as hbs.AST.Expression
}
