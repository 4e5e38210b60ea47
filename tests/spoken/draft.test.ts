import { describe, expect, it } from 'vitest'
import { controlsShown } from '../../src/casebook/control-characters.ts'
import { buildLexicon, draftVisit, understand } from '../../src/spoken/index.ts'
import { drafted, nothingKnown } from './said.ts'

const said = `Right, left fore as she comes. Toe length ninety-eight, toe angle about forty-four. Bit of thrush in the central sulcus.
She bit the dog. Right fore toe length ninety-six or ninety-seven. Digital pulses none, none, faint, none. Tell Ada to keep it dry.
See her in five weeks.`

describe('a draft', () => {
  it('has what is sure as lines under their words, what is not as questions, the rest as notes', () => {
    expect(drafted(said)).toBe(`---
# Not sure, and so not written below. Settle each, then delete these lines.
# 1. Which is it: toe length? "toe length ninety-six or ninety-seven."
date: 2026-11-27
draft: yes
before:
  # LF "Right, left fore as she comes. Toe length ninety-eight,"
  toe length: {LF: 98}
  # LF "toe angle about forty-four." (said with doubt)
  toe angle: {LF: 44}
findings:
  LF:
    # "Bit of thrush in the central sulcus."
    - thrush, central sulcus, 1
comfort:
  # LF RF LH RH "Digital pulses none, none, faint, none."
  digital pulse: [0, 0, 1, 0]
care:
  # "Tell Ada to keep it dry."
  - "keep it dry"
# "See her in five weeks."
next visit: in 5 weeks
---
She bit the dog. Right fore toe length ninety-six or ninety-seven.
`)
  })

  it('gives the time where there is one', () => {
    const vtt = 'WEBVTT\n\n01:02:03.000 --> 01:02:05.000\nLeft fore toe length 98.\n'
    expect(drafted(vtt)).toContain('# LF "Left fore toe length 98." 1:02:03')
  })

  it('writes a bare number in the practice’s unit, and any other with its own', () => {
    const inches = { ...nothingKnown, units: 'in' as const }
    expect(drafted('Left fore toe length three and five eighths.', inches)).toContain('{LF: 3 5/8}')
    expect(drafted('Left fore toe length ninety-eight millimetres.', inches)).toContain('{LF: 98 mm}')
  })

  it('names who judged', () => {
    expect(drafted('Vet scored him two out of five on the left fore.')).toContain(
      'lameness: {LF: 2, by: vet}',
    )
    expect(drafted('Left fore one lame.')).toContain('lameness: {LF: 1}')
  })

  it('holds no sign that steers what shows it', () => {
    const draft = drafted('Left fore \u001b[31m toe \u202e length 98 \u0000.')
    expect(draft).toBe(controlsShown(draft))
  })
})

it('findings of the practice’s own are understood, whatever signs their names have', () => {
  const lexicon = buildLexicon(['chalk toe', 'wet: toe #2'])
  const said = 'Left fore chalk toe, sole, mild. Right fore wet toe 2, sole, moderate.'
  const draft = draftVisit(understand(said, nothingKnown, lexicon), nothingKnown)
  expect(draft).toContain('- chalk toe, sole, 1')
  expect(draft).toContain('- "wet: toe #2, sole, 2"')
})
