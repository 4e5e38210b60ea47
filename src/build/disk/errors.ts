/** A fault that a person can do something about. Commands show its message alone, never a stack trace. */
export class UserError extends Error {
  override readonly name = 'UserError'
}

/** The build was asked to stop before it had published anything. */
export class Stopped extends Error {
  override readonly name = 'Stopped'
  constructor() {
    super('Stopped. Nothing was published, the site is as it was.')
  }
}

const reasons: Readonly<Record<string, string>> = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'the space allowed on this disk is used up',
  EFBIG: 'the disk refuses a file of that size',
  EROFS: 'the disk is read-only',
  EACCES: 'this account has no right to it',
  EPERM: 'this account has no right to it',
  EMFILE: 'too many files are open at once',
  ENFILE: 'too many files are open at once',
  EIO: 'the disk reports a fault',
  ENAMETOOLONG: 'the name is too long',
  ENOENT: 'it is not there',
  ENOTDIR: 'a file stands where a folder is needed',
  EISDIR: 'a folder stands where a file is needed',
  EEXIST: 'something is there already',
  ENOTEMPTY: 'a folder that is not empty is in the way',
  ELOOP: 'it is a link',
  EBUSY: 'another program is using it',
}

/** The system's short name of a fault, `ENOSPC`, or null when it is none of the system's. */
export const systemCode = (error: unknown): string | null =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : null

/**
 * A fault of the disk in plain words: `site/index.html could not be written: the disk is full`.
 * A fault that is none of the system's is handed back as it is.
 */
export function asUserError(error: unknown, path: string, action: string): unknown {
  const code = systemCode(error)
  if (code === null) return error
  return new UserError(`${path} could not be ${action}: ${reasons[code] ?? `the system says ${code}`}`)
}
