/** Why a picture cannot be used, in words, at the line that names it. */
import type { Diagnostic } from '../casebook/diagnostic.ts'
import type { CasebookFolder } from '../casebook/folder.ts'
import { reportOn } from '../casebook/report.ts'
import { type ForeignForm, type PictureForm, renamedAs } from './form.ts'

/** Largest file that is opened, bytes. */
export const mostBytes = 64 * 1024 * 1024
/** Most pixels that are decoded: above any telephone's usual picture, and bounded in memory. */
export const mostPixels = 100_000_000

export type Refusal =
  | { readonly refusal: 'too many bytes'; readonly size: number }
  | { readonly refusal: 'too many pixels'; readonly width: number; readonly height: number }
  | { readonly refusal: 'unreadable'; readonly reason: string }
  | { readonly refusal: 'broken' }
  | { readonly refusal: 'empty' }
  | { readonly refusal: 'form'; readonly form: ForeignForm | null }
  | { readonly refusal: 'mislabelled'; readonly form: PictureForm }

interface Words {
  readonly message: string
  readonly expected?: string
  readonly advice?: string
}

const pictureForms = 'a picture as JPEG, PNG, WebP, AVIF or HEIC'
const figures = (n: number) => n.toLocaleString('en-GB')
const mebibytes = (bytes: number) => `${figures(Math.ceil(bytes / 1024 / 1024))} MiB`

const foreign: Readonly<Record<ForeignForm, string>> = {
  gif: 'a GIF picture',
  tiff: 'a TIFF picture',
  svg: 'an SVG drawing',
  pdf: 'a PDF document',
}

function wordsFor(refused: Refusal, file: string): Words {
  switch (refused.refusal) {
    case 'empty':
      return { message: `The picture ${file} is an empty file.`, advice: 'copy the picture again' }
    case 'unreadable':
      return { message: `The picture ${file} cannot be read: ${refused.reason}.` }
    case 'broken':
      return {
        message: `The picture ${file} is broken: it ends too early or holds bytes that are no picture.`,
        advice: 'copy it again from the camera, or open it in a picture program and save it as JPEG',
      }
    case 'too many bytes':
      return {
        message: `The picture ${file} has ${mebibytes(refused.size)}.`,
        expected: `at most ${mebibytes(mostBytes)}`,
        advice: 'save it smaller as JPEG',
      }
    case 'too many pixels':
      return {
        message: `The picture ${file} says that it has ${figures(refused.width)} by ${figures(refused.height)} pixels.`,
        expected: `at most ${figures(mostPixels)} pixels in all`,
        advice: 'save it smaller as JPEG',
      }
    case 'mislabelled':
      return {
        message: `The picture ${file} is ${article(refused.form)} by its content, not what its name says.`,
        expected: 'a name that ends as the picture is',
        advice: `rename it to ${renamedAs(file, refused.form)}, here and in the folder`,
      }
    case 'form':
      return {
        message: `${file} is ${refused.form === null ? 'no picture that can be read' : foreign[refused.form]}.`,
        expected: pictureForms,
        advice: 'save it as JPEG',
      }
  }
}

const article = (form: PictureForm) =>
  form === 'avif' || form === 'heic'
    ? `an ${form.toUpperCase()}`
    : `a ${form === 'webp' ? 'WebP' : form.toUpperCase()}`

/** Why, and what to do, as one text for a terminal. */
export function refusalText(refusal: Refusal, file: string): string {
  const { message, expected, advice } = wordsFor(refusal, file)
  return [
    message,
    ...(expected ? [`Expected: ${expected}.`] : []),
    ...(advice ? [`What to do: ${advice}.`] : []),
  ].join(' ')
}

/** The refusal at the first line of the visit that names the picture. */
export function refused(
  refusal: Refusal,
  file: string,
  visitFile: string,
  folder: CasebookFolder,
): readonly Diagnostic[] {
  const { report, span } = reportAt(file, visitFile, folder)
  const { message, ...advice } = wordsFor(refusal, file)
  report.error(`picture-${refusal.refusal.replaceAll(' ', '-')}`, span, message, advice)
  return report.diagnostics
}

/** A report on a visit, and where the visit first names a picture. */
export function reportAt(file: string, visitFile: string, folder: CasebookFolder) {
  const text = new TextDecoder().decode(folder.read(visitFile))
  const start = text.indexOf(file)
  return {
    report: reportOn(visitFile, text),
    span: start < 0 ? null : { start, end: start + file.length },
  }
}
