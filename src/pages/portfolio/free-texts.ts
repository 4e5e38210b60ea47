/**
 * Every text of a case that a person wrote and that its pages or its table hold. What is not here is words of this
 * program, and names of findings and places that it knows.
 */
import { findingNamed } from '../../casebook/finding-words.ts'
import type { FreeText, FreeTextKind } from '../../identity/sentences.ts'
import type { CaseSubject } from './context.ts'
import { teachingParts } from './discussion.ts'

/** In the order in which the page has them; each once. */
export function freeTexts(context: CaseSubject): readonly FreeText[] {
  const { horse, practice, visits, alias, anonymous } = context
  const { file } = horse
  const ofCase = (
    what: FreeTextKind,
    original: string,
    where: string,
    published = anonymous(original),
  ): FreeText => ({
    what,
    original,
    published,
    file: where,
    isOfPractice: false,
  })
  const ofPractice = (name: string): FreeText => ({
    what: 'practice',
    original: name,
    published: name,
    file: 'practice.md',
    isOfPractice: true,
  })
  const found = visits.flatMap((visit) => visit.findings.map(({ what }) => ({ what, file: visit.file })))
  const followed = visits.flatMap((visit) => visit.growOut.map(({ what }) => ({ what, file: visit.file })))
  const texts: readonly FreeText[] = [
    ofCase('alias', alias, file, alias),
    ...(practice.portfolio.hidesPractice ? [] : [ofPractice(practice.name)]),
    ...[...found, ...followed]
      .filter(({ what }) => findingNamed(what, {}) === null)
      .map((one) => ofCase('finding', one.what, one.file)),
    ...teachingParts(context).map(({ visit, isOwnersView, text }) =>
      ofCase(isOwnersView ? 'ownerView' : 'teaching', text, visit?.file ?? file),
    ),
  ]
  const seen = new Set<string>()
  return texts.filter(({ published }) => {
    const isNew = !seen.has(published)
    seen.add(published)
    return isNew
  })
}
