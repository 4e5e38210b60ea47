/** The `photos` of a visit: which file, of what, and the points marked on it. */
import type { Foot } from '../hoof/feet.ts'
import { type PhotoView, photoViews } from '../hoof/landmarks.ts'
import { foot } from './by-foot.ts'
import { field, gapIn, type ParseContext, readFields, required, wrongForm } from './fields.ts'
import { landmarkFields, landmarksOf } from './landmarks.ts'
import { limits } from './limits.ts'
import type { Photo, Stage } from './model.ts'
import { oneOf, text, textUpTo } from './readers.ts'
import type { Help, TextRange } from './report.ts'
import { either, nearest, quote } from './words.ts'
import type { YamlMap, YamlNode } from './yaml-tree.ts'

/** What lies in the horse's folder: paths from that folder, and which of them are links. */
export interface HorseFolder {
  readonly files: ReadonlySet<string>
  readonly links: ReadonlySet<string>
}

const photoFields = {
  ...landmarkFields,
  file: required<string | null>(textUpTo(limits.path), null, 'the picture: photos/lf-side.jpg'),
  foot: field<Foot | null>(foot, null),
  view: field<PhotoView>(oneOf(photoViews), 'other'),
  stage: field<Stage | null>(oneOf(['before', 'after'] as const), null),
  caption: field<string | null>(text, null),
}

/** A photo and where its entry names it. */
export interface PlacedPhoto {
  readonly photo: Photo
  readonly range: TextRange
}

/** The photos of a visit; `value` is what stands under `photos`, or nothing. */
export function readPhotos(
  value: YamlNode,
  context: ParseContext,
  folder: HorseFolder,
): readonly PlacedPhoto[] {
  if (value.kind === 'nothing') return []
  const entries = value.kind === 'list' ? value.items : [value]
  const read: PlacedPhoto[] = []
  for (const entry of entries) {
    if (entry.kind === 'nothing' || gapIn(entry, 'a photo', context)) continue
    if (entry.kind !== 'map') {
      wrongForm(
        entry,
        context,
        'a photo',
        '{file: photos/lf-side.jpg, foot: LF, view: lateral, stage: before}',
      )
      continue
    }
    const placed = readPhoto(entry, context, folder)
    if (!placed) continue
    const { photo } = placed
    if (read.some((other) => areOne(other.photo, photo))) {
      context.report.warning(
        'written-twice',
        fileAt(entry),
        `The picture ${quote(photo.file)} is named twice.`,
        {
          expected: 'each picture once, under the foot and the view that it shows',
          advice: 'name the other picture that was meant, or remove one of the two lines',
        },
      )
    }
    read.push(placed)
  }
  return read
}

/** From the front or from behind one picture may show two feet. */
const areOne = (one: Photo, other: Photo): boolean =>
  one.file === other.file &&
  !(one.foot !== other.foot && one.view === other.view && viewsOfTwo.has(other.view))
const viewsOfTwo: ReadonlySet<PhotoView> = new Set<PhotoView>(['front', 'behind', 'other'])

const fileAt = (entry: YamlMap): TextRange =>
  entry.entries.find(({ key }) => key.text.toLowerCase() === 'file')?.value ?? entry

function readPhoto(entry: YamlMap, context: ParseContext, folder: HorseFolder): PlacedPhoto | null {
  const read = readFields(entry, photoFields, context, 'of a photo')
  const landmarks = landmarksOf(read, read, entry, context)
  if (read.file === null) return null
  const file = fileWithin(read.file, fileAt(entry), context, folder)
  if (file === null) return null
  const { foot, view, stage, caption } = read
  return { photo: { file, foot, view, stage, caption, landmarks }, range: fileAt(entry) }
}

/** The path if it names a picture inside the horse's folder, else null (reported). */
function fileWithin(path: string, at: TextRange, context: ParseContext, folder: HorseFolder): string | null {
  const clean = path.replace(/^\.\//, '')
  if (/^[/\\]|^[a-z]:|^[a-z]+:\/\//i.test(clean) || clean.includes('\\') || clean.split('/').includes('..')) {
    const within = [clean.replaceAll('\\', '/'), `photos/${clean.split(/[/\\]/).at(-1)}`].find((one) =>
      folder.files.has(one),
    )
    context.report.error('photo-outside', at, `${quote(path)} points out of the horse's folder.`, {
      ...(within && pathHelp(within)),
      expected: "a path inside the horse's folder, with / between: photos/lf-side.jpg",
      ...(!within && {
        advice: `copy the picture into the folder photos and write photos/${clean.split(/[/\\]/).at(-1)}`,
      }),
    })
    return null
  }
  if (folder.links.size > 0 && withParents(clean).some((parent) => folder.links.has(parent))) {
    context.report.error(
      'link',
      at,
      `${quote(path)} is a link or lies behind one, and links are never followed.`,
      {
        expected: 'a picture of its own',
        advice: 'replace the link by a copy of the file',
      },
    )
    return null
  }
  if (folder.files.has(clean)) return clean
  const pictures = [...folder.files].filter((file) => !file.endsWith('.md'))
  const otherCase = pictures.filter((file) => file.toLowerCase() === clean.toLowerCase())
  const [same] = otherCase
  if (same && otherCase.length === 1) {
    context.report.error(
      'photo-case',
      at,
      `The picture is named ${quote(same)}: only capital and small letters differ.`,
      {
        expected: 'the name letter by letter, since many computers tell capitals from small letters',
        ...pathHelp(same),
      },
    )
    return null
  }
  const meant = nearestFile(clean, pictures)
  context.report.error('photo-missing', at, `There is no picture ${quote(path)} in the horse's folder.`, {
    expected:
      pictures.length > 0 && pictures.length < 6
        ? either(pictures)
        : 'a picture that lies in the folder photos',
    ...(meant && pathHelp(meant)),
  })
  return null
}

/** `photos/a.jpg` gives `photos` and `photos/a.jpg`. */
const withParents = (path: string): readonly string[] =>
  [...path.matchAll(/\/|$/g)].map(({ index }) => path.slice(0, index))

const only = <T>(found: readonly T[]): T | null => (found.length === 1 ? (found[0] ?? null) : null)

/** The path as a fix, unless it holds signs that YAML would read as something else. */
const pathHelp = (path: string): Pick<Help, 'fix' | 'advice'> =>
  /^[\w./ ()+-]+$/.test(path) ? { fix: path } : { advice: `write ${quote(path)} in quotes` }

function nearestFile(path: string, pictures: readonly string[]): string | null {
  const stem = (file: string) => file.replace(/^.*\//, '').replace(/\.[^.]*$/, '')
  const meant = nearest(stem(path), pictures.map(stem))
  return (
    only(pictures.filter((file) => file.endsWith(`/${path}`))) ??
    only(pictures.filter((file) => stem(file) === stem(path))) ??
    only(pictures.filter((file) => stem(file) === meant))
  )
}
