/** The page on which points are marked on one picture. */
import type { Photo, Visit } from '../../casebook/model.ts'
import { isSide } from '../../hoof/marks.ts'
import { capital, type Formatter } from '../shared/format.ts'
import type { PageView } from '../shared/page.ts'
import { subjectOf } from '../shared/photos.ts'
import type { Words } from '../words/index.ts'
import { isMirrored, type MarkedView, type MarkTask, markTask } from './mark-task.ts'

/** What is known of the picture before it is marked. */
export interface MarkSubject {
  /** Path in the horse's folder. */
  readonly file: string
  readonly view: MarkedView
  /** The entry that names it, or null. */
  readonly entry: { readonly photo: Photo; readonly visit: Visit } | null
  /** Of the upright picture. */
  readonly width: number
  readonly height: number
  /** As it would be on film of 35 mm, millimetres; null where the camera did not note it. */
  readonly focalLength: number | null
}

export function markPage(subject: MarkSubject, format: Formatter): PageView {
  const { mark: words } = format.words
  const { file, view, entry } = subject
  const task = deskTask(subject, words)
  const foot = entry?.photo.foot ?? null
  const visitFile = entry === null ? null : entry.visit.file
  return {
    path: 'index.html',
    template: 'mark/mark',
    model: {
      lang: format.words.base.lang,
      w: words,
      title: words.title(file),
      about:
        entry === null
          ? words.noVisit
          : words.inVisit(capital(subjectOf(entry.photo, format)), format.date(entry.visit.date)),
      task,
      sample: isSide(view) ? 'side' : view,
      mirrored: foot !== null && isMirrored(view, foot),
      cameraTold: typeof task.camera === 'object' && task.camera !== null,
      write: visitFile === null ? null : words.write(visitFile),
      writeHow: visitFile === null ? words.cannotWrite : words.writeHow(visitFile),
    },
  }
}

/** Plain data for the page's script. */
export interface DeskMarkTask extends MarkTask {
  /** First lines of the block, up to the points. */
  readonly head: string
}

function deskTask({ file, entry, ...shown }: MarkSubject, words: Words['mark']): DeskMarkTask {
  const { view, width, height } = shown
  const foot = entry?.photo.foot ?? null
  const landmarks = entry?.photo.landmarks ?? null
  const key = [file, entry?.visit.id ?? '', view, width, height].join(' ')
  return {
    ...markTask({ ...shown, foot, landmarks }, key, words),
    head: headOf(file, view, entry?.photo ?? null),
  }
}

function headOf(file: string, view: MarkedView, photo: Photo | null): string {
  const keys: readonly (readonly [string, string | null])[] = [
    ['foot', photo === null ? '_' : photo.foot],
    ['view', view],
    ['stage', photo === null ? '_' : photo.stage],
    ['caption', photo?.caption == null ? null : JSON.stringify(photo.caption)],
  ]
  const lines = keys.flatMap(([key, value]) => (value === null ? [] : [`    ${key}: ${value}\n`]))
  return `  - file: ${/^[\w./-]+$/.test(file) ? file : JSON.stringify(file)}\n${lines.join('')}`
}
