/**
 * A visit as the yard page holds it while it is written: plain data, kept on the phone, from which the case file is
 * written. Texts stand as typed; only the reader of case files judges them.
 */
// The smaller door of the same library: the page carries it.
import * as z from 'zod/mini'
import { feet } from '../hoof/feet.ts'
import { photoViews } from '../hoof/landmarks.ts'

const foot = z.enum(feet)
const stage = z.enum(['before', 'after'])

/** Said to whom it was heard from, where a dictated note gave it; null where it was typed. */
const heard = z.nullable(z.string())

const photo = z.object({
  /** Name of its file, unique within the draft: `2026-11-27-lf-side-3f9a.jpg`. */
  name: z.string(),
  /** SHA-256 of its bytes in hexadecimal digits: by which a file that was renamed on its way is known again. */
  sha256: z.string(),
  foot: z.nullable(foot),
  view: z.enum(photoViews),
  stage: z.nullable(stage),
  /** Marked points, as lines of a `landmarks` block without their indent; null where none are marked. */
  landmarks: z.nullable(z.string()),
})

export const yardDraft = z.object({
  /** Twelve hexadecimal digits drawn by chance. */
  id: z.string().check(z.regex(/^[0-9a-f]{12}$/)),
  /** Raised when it is changed after it was given out. */
  version: z.int().check(z.minimum(1)),
  /** When it was last changed, ISO 8601. */
  changed: z.string(),
  /** The version last given out; null where it never was. */
  given: z.nullable(z.int()),
  /** Id of the horse. */
  horse: z.string(),
  date: z.string(),
  /** Id of the person of the practice who writes. */
  by: z.nullable(z.string()),
  readings: z.array(z.object({ stage, foot, measure: z.string(), text: z.string(), heard })),
  findings: z.array(
    z.object({
      foot,
      what: z.string(),
      place: z.string(),
      grade: z.int().check(z.minimum(0), z.maximum(3)),
      heard,
    }),
  ),
  features: z.array(z.object({ foot, what: z.string(), place: z.string(), text: z.string(), heard })),
  comfort: z.object({
    lameness: z.partialRecord(foot, z.string()),
    lamenessBy: z.nullable(z.enum(['vet', 'practitioner'])),
    landing: z.partialRecord(foot, z.string()),
    'digital pulse': z.partialRecord(foot, z.string()),
    surfaces: z.record(z.string(), z.string()),
  }),
  body: z.object({ weight: z.string(), condition: z.string(), crest: z.string() }),
  care: z.array(z.string()),
  nextVisit: z.string(),
  /** Private notes, typed; and what was dictated, whole, apart from what of it stands above. */
  note: z.string(),
  forOwner: z.string(),
  dictated: z.string(),
  photos: z.array(photo),
  /** What dictation left unsure, with its words; the visit stays a draft while any is there. */
  questions: z.array(z.object({ ask: z.string(), said: z.string() })),
  /**
   * What was made of `dictated`, so that the next hearing knows what is its own: written by `dictation.ts` alone. A
   * field that has another text by now, or is gone, is the hand's.
   */
  hearing: z.object({
    lines: z.array(z.object({ key: z.string(), text: z.string(), words: z.string() })),
    /** Sentences in order, with the lines that they stand in; one that is not used up stays in the notes. */
    sentences: z.array(
      z.object({ text: z.string(), opens: z.boolean(), isUsed: z.boolean(), lines: z.array(z.string()) }),
    ),
    asked: z.array(z.object({ ask: z.string(), said: z.string() })),
  }),
  /** Whether the person says that it is not finished. */
  isUnfinished: z.boolean(),
})

export type YardDraft = z.infer<typeof yardDraft>
export type YardPhoto = z.infer<typeof photo>

/** A visit in which nothing is written yet. */
export const emptyDraft = (of: Pick<YardDraft, 'id' | 'changed' | 'horse' | 'date' | 'by'>): YardDraft => ({
  ...of,
  version: 1,
  given: null,
  readings: [],
  findings: [],
  features: [],
  comfort: { lameness: {}, lamenessBy: null, landing: {}, 'digital pulse': {}, surfaces: {} },
  body: { weight: '', condition: '', crest: '' },
  care: [],
  nextVisit: '',
  note: '',
  forOwner: '',
  dictated: '',
  photos: [],
  questions: [],
  hearing: { lines: [], sentences: [], asked: [] },
  isUnfinished: false,
})
