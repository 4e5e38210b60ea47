/**
 * How much a case file, a table to be imported or a parcel may hold: far more than a person writes, and little enough that reading it, and making pages of
 * it, always ends soon. Each is told of where it is exceeded.
 */
export const limits = {
  /** Bytes of a file. A long visit is 4 KiB. */
  fileBytes: 256 * 1024,
  /** Letters of a name, a number to ring, a private word, a key. */
  name: 100,
  /**
   * Bytes of an alias with its letters taken apart: the portfolio's folder of the horse is named by it, and no disk takes
   * a name of more than 255.
   */
  aliasBytes: 200,
  /** Letters of a picture's path. */
  path: 400,
  /** Lines of `problems`, and letters of one: a case is about a handful. */
  problems: 40,
  problem: 200,
  /** Letters of any other text of the block: a line of care, a diagnosis, the words of a finding. */
  text: 4000,
  /** Items of a list, or keys that stand together. A practice may have that many owners. */
  entries: 2000,
  /** Lists and keys inside each other in the block; the format itself needs five. */
  blockDepth: 20,
  /** Signs of lists and quotations in a row at the beginning of a line of the body. */
  containers: 12,
  /** Columns by which such a sign may be moved in: twelve lists inside each other, each by five. */
  indent: 60,
  /** Lines of the body with no empty line between. */
  linesTogether: 1000,
  /** Signs of emphasis, links, code and HTML in lines with no empty line between; a picture counts for five, `<!` for ten. */
  marksTogether: 2000,
  /** Headings that a line of `=` or `-` makes, in a body. */
  underlined: 100,
  /** Cells of all tables of a body. */
  tableCells: 20_000,
  /** Letters of an address that is given once, for many links. */
  definition: 1000,
  /** Bytes of a table to be imported, and of a line of it. */
  tableBytes: 16 * 1024 * 1024,
  rowBytes: 16 * 1024,
  /** Files of a parcel from the yard page, and their bytes, one by one and in all, unpacked. */
  parcelFiles: 2000,
  pictureBytes: 32 * 1024 * 1024,
  parcelBytes: 512 * 1024 * 1024,
} as const
