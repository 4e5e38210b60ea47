/** All that building does to the disk. Handed in, so that a test can let the disk fail. */

/** Ends the name of a file that is being copied from another disk. */
export const besideEnding = '.growdown-new'

export interface FileStat {
  readonly kind: 'file' | 'folder' | 'link' | 'other'
  readonly size: number
  /** Milliseconds. */
  readonly modified: number
  /** Permission bits. */
  readonly mode: number
  /** Which disk it lies on. */
  readonly device: number
  /** Names of one file share it, on one disk. */
  readonly inode: number
}

export interface NamedEntry {
  readonly name: string
  readonly kind: FileStat['kind']
}

/** A lock that was taken. */
export interface Lock {
  giveBack(): void
}

/** A lock that another has. */
export interface Held {
  /** What it left there of itself; empty when nothing. */
  readonly by: string
  /** What a holder that died can have left and a person may delete; null where the system gives back by itself. */
  readonly leftOver: string | null
}

/** Every call throws `UserError` with a plain sentence when the disk refuses. */
export interface Files {
  /** What is there, links not followed; null when nothing is. */
  stat(path: string): FileStat | null
  /** The path without links on its way; null when nothing is there. */
  realPath(path: string): string | null
  /** The bytes of a file; null when it is not there. */
  read(path: string): Uint8Array | null
  /** Names in a folder; empty when it is not there. */
  names(path: string): readonly string[]
  /** Names in a folder with what they are; empty when it is not there. */
  entries(path: string): readonly NamedEntry[]
  /** Whether files may be made in this folder. Throws the reason when not. */
  mustBeWritable(folder: string): void
  /** Makes a folder and those above it. */
  makeFolder(path: string): void
  /** Makes a folder for the eyes of this account alone, or makes it so; those above it as well where they are new. */
  makePrivateFolder(path: string): void
  /** Gives a folder the permission bits of another. */
  setMode(path: string, mode: number): void
  /** Gives a file another time of its last change, milliseconds. */
  setModified(path: string, time: number): void
  /** Writes a file whole and makes its folder. */
  write(path: string, data: string | Uint8Array): void
  /** The same for the eyes of this account alone. */
  writePrivate(path: string, data: string | Uint8Array): void
  /** One more name for a file; false where this disk has no such thing. */
  link(from: string, to: string): boolean
  /** A copy of a file where nothing is; throws where something is. */
  copyNew(from: string, to: string): void
  /** The same symbolic link once more. */
  copyLink(from: string, to: string): void
  /** Puts a file in another's place in one step; one from another disk is copied beside it first. */
  move(from: string, to: string): void
  /** Puts a folder where none is; false where the disk has it that neither can be moved. */
  moveFolder(from: string, to: string): boolean
  /** Exchanges two folders in one step; false where disk or system cannot, and nothing has changed. */
  exchange(a: string, b: string): boolean
  /** Removes a file; nothing happens when it is not there. */
  remove(path: string): void
  /** Removes a folder if it is empty; false when it stays. */
  removeIfEmpty(folder: string): boolean
  /** Removes a folder with all that is in it. For what the tool alone writes to, in its work folder. */
  removeTree(folder: string): void
  /** Takes a lock, or tells who has it. */
  lock(path: string, holder: string): Lock | Held
}
