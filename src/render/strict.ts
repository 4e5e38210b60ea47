/**
 * Handlebars' strict mode minds the names that a template prints. This lets it mind the names that a template hands to
 * helpers and blocks as well: `{{#each visitz}}` is an error, where Handlebars would show nothing.
 */
import Handlebars from 'handlebars'

/** Parses a template and marks every path that is an argument as one that must be there; null and false are there. */
export function parseStrictly(source: string): hbs.AST.Program {
  const program = Handlebars.parse(source)
  new Arguments().accept(program)
  return program
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
    watch(expression)
    super.SubExpression(expression)
  }
}

function watch({ params, hash }: Call): void {
  for (const param of [...params, ...(hash?.pairs ?? []).map(({ value }) => value)]) {
    // The compiler reads this mark of a path; the types leave it out.
    if (param.type === 'PathExpression') (param as { strict?: boolean }).strict = true
  }
}
