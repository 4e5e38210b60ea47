export function precompile(sources: Iterable<readonly [path: string, source: string]>): string
