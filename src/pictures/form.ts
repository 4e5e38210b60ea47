/** What a picture file is by its own first bytes, whatever its name says. */

export type PictureForm = 'jpeg' | 'png' | 'webp' | 'avif' | 'heic'

/** Forms that are told apart only to say what to do about them. */
export type ForeignForm = 'gif' | 'tiff' | 'svg' | 'pdf'

const ours: ReadonlySet<string> = new Set(['jpeg', 'png', 'webp', 'avif', 'heic'])
const endings: Readonly<Record<PictureForm, readonly string[]>> = {
  jpeg: ['jpg', 'jpeg', 'jpe', 'jfif'],
  png: ['png'],
  webp: ['webp'],
  avif: ['avif'],
  heic: ['heic', 'heif'],
}

export const isOurs = (form: string): form is PictureForm => ours.has(form)

/** Null where the first bytes are those of no picture that is known here. */
export function formOf(bytes: Uint8Array): PictureForm | ForeignForm | null {
  const head = latin(bytes.subarray(0, 64))
  if (head.startsWith('\xff\xd8\xff')) return 'jpeg'
  if (head.startsWith('\x89PNG\r\n\x1a\n')) return 'png'
  if (head.startsWith('RIFF') && head.slice(8, 12) === 'WEBP') return 'webp'
  if (head.slice(4, 8) === 'ftyp') return /avi[fs]/.test(head.slice(8)) ? 'avif' : heicIn(head)
  if (head.startsWith('GIF8')) return 'gif'
  if (head.startsWith('II*\0') || head.startsWith('MM\0*')) return 'tiff'
  if (head.startsWith('%PDF')) return 'pdf'
  return /^\uFEFF?\s*<(?:\?xml|svg|!doctype svg)/i.test(text(bytes.subarray(0, 64))) ? 'svg' : null
}

const heicIn = (head: string) => (/hei[cxms]|hev[cxms]|mif1|msf1/.test(head.slice(8)) ? 'heic' : null)
const latin = (bytes: Uint8Array) => Buffer.from(bytes).toString('latin1')
const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes)

/** Whether the file's name ends as this form's do. */
export const endsAs = (path: string, form: PictureForm): boolean =>
  endings[form].includes(path.slice(path.lastIndexOf('.') + 1).toLowerCase())

/** The same path with the ending of a form. */
export const renamedAs = (path: string, form: PictureForm): string =>
  `${path.replace(/\.[^./]*$/, '')}.${endings[form][0] ?? form}`
