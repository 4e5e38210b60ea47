/** The demo's horses and one of forty visits, as pages are given them. */
import type { CasebookFolder } from '../../src/casebook/folder.ts'
import type { Casebook, Horse } from '../../src/casebook/model.ts'
import { readCasebook } from '../../src/casebook/read.ts'
import type { PlainDate } from '../../src/hoof/dates.ts'
import type { HorseInput } from '../../src/pages/shared/horse-input.ts'
import { assess } from '../../src/trend/assess.ts'
import type { Learned } from '../../src/trend/model/learned.ts'
import { diskFolder } from '../casebook/disk-folder.ts'
import { memoryFolder } from '../casebook/memory-folder.ts'
import { formatIn } from '../english.ts'
import { fortyVisits } from './forty-visits.ts'

export const demoFolder = diskFolder('cases')

function read(folder: CasebookFolder, asOf: PlainDate): Casebook {
  const { casebook } = readCasebook(folder, asOf)
  if (casebook === null) throw new Error('a casebook cannot be read')
  return casebook
}

export const demoCasebook = (asOf: PlainDate): Casebook => read(demoFolder, asOf)

interface InputChoices {
  readonly format?: HorseInput['format']
  readonly learned?: Learned
  readonly pictures?: (horse: Horse) => HorseInput['pictures']
}

/** In English, with nothing learned from the practice and no picture, where nothing else is chosen. */
export const inputsOf = (
  { practice, horses }: Casebook,
  asOf: PlainDate,
  { format = formatIn(practice.units), learned, pictures = () => new Map() }: InputChoices = {},
): readonly HorseInput[] =>
  horses.map((horse) => ({
    horse,
    practice,
    assessment: assess(horse, practice, asOf, learned),
    pictures: pictures(horse),
    format,
  }))

/** A picture of each photograph of a horse, made in one size. */
export const allPictures = ({ visits }: Horse): HorseInput['pictures'] =>
  new Map(
    visits
      .flatMap(({ photos }) => photos)
      .map(({ file }) => [
        file,
        {
          file,
          width: 1600,
          height: 1200,
          variants: [{ path: `${file}.jpg`, type: 'image/jpeg', width: 800, height: 600 }],
        },
      ]),
  )

/** As the editions for others are given them. */
export function demoInputs(asOf: PlainDate): readonly HorseInput[] {
  const practiceFile = new TextDecoder().decode(demoFolder.read('practice.md'))
  const hard = memoryFolder({ 'practice.md': practiceFile, ...fortyVisits('hard', 'tornby', 'Rowan') })
  return [demoCasebook(asOf), read(hard, asOf)].flatMap((casebook) => inputsOf(casebook, asOf))
}
