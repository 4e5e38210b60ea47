/**
 * The first lines of a visit on its way: for which horse it is, which pictures go with it, and a hash by which it is seen
 * whether it came whole. They are remarks of the block, so that the file is a case file with them and without.
 */
import type { Practice } from '../casebook/model.ts'
import type { YardDraft } from './draft.ts'

/** What decides how a bare number and a list of four are read. */
export type WritingPractice = Pick<Practice, 'feetOrder' | 'units'>

/** `mm, LF RF LH RH`: the phone's practice.md may be older than the desk's. */
export const writtenBy = ({ units, feetOrder }: WritingPractice): string => `${units}, ${feetOrder.join(' ')}`

/** What a text says of itself. */
export interface Label {
  readonly horse: string | null
  readonly pictures: readonly LabelledPicture[]
  /** Unit and order of feet of the practice that wrote it. */
  readonly writtenBy: string | null
  /** Whether it is as it left the phone; null where it does not say. */
  readonly isWhole: boolean | null
  /** The case file without the label. */
  readonly text: string
}

export interface LabelledPicture {
  /** Name of its file within `photos`. */
  readonly name: string
  readonly sha256: string
}

/** SHA-256 in hexadecimal digits, as a photo of a draft has it. */
export async function sha256Of(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = new Uint8Array(await globalThis.crypto.subtle.digest('SHA-256', bytes))
  return [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}

const opening = '---\n'

export async function withLabel(
  text: string,
  { horse, photos }: Pick<YardDraft, 'horse' | 'photos'>,
  practice: WritingPractice,
): Promise<string> {
  const lines = [
    `# yard horse: ${horse}`,
    `# yard units: ${writtenBy(practice)}`,
    ...photos.map(({ name, sha256 }) => `# yard picture: ${sha256} ${name}`),
    `# yard whole: ${await hashOf(text)}`,
  ]
  return text.startsWith(opening) ? `${opening}${lines.join('\n')}\n${text.slice(opening.length)}` : text
}

const line = /^# yard (horse|units|picture|whole): (.*)$/

/** Reads a label off a text, whose ends of lines another system may have changed. */
export async function readLabel(written: string): Promise<Label> {
  const lines = written
    .replace(/^\uFEFF/, '')
    .replaceAll('\r\n', '\n')
    .split('\n')
  const end = lines.findIndex((one, index) => index > 0 && !line.test(one))
  const label = lines.slice(1, end).map((one) => {
    const [, kind, value = ''] = line.exec(one) ?? []
    return { kind, value: value.trim() }
  })
  const text = [...lines.slice(0, 1), ...lines.slice(end)].join('\n')
  const valuesOf = (kind: string) => label.flatMap((one) => (one.kind === kind ? [one.value] : []))
  const [hash] = valuesOf('whole')
  return {
    horse: valuesOf('horse')[0] ?? null,
    writtenBy: valuesOf('units')[0] ?? null,
    pictures: valuesOf('picture').flatMap((value) => {
      const [, sha256, name] = /^([0-9a-f]{64}) (\S+)$/.exec(value) ?? []
      return sha256 === undefined || name === undefined ? [] : [{ sha256, name }]
    }),
    isWhole: hash === undefined ? null : hash === (await hashOf(text)),
    text,
  }
}

/** Spaces at the end of a text are what a program on the way adds or takes. */
const hashOf = async (text: string): Promise<string> =>
  (await sha256Of(new TextEncoder().encode(text.trimEnd()))).slice(0, 32)
