// People of the crew, asked for by their names.
import { describe, expect, it } from 'vitest'
import { answered } from '../../helpers/answered.ts'
import { Walk } from '../../helpers/example.ts'

const judged = new Walk().toVerdict().keys('1', 'KH', 'inside its limits, none given', '')

describe('a person who is named in a question', () => {
  it.each(['who is K Haas and was he there', 'what did K. Haas sign', 'was haas there', 'is Haas in it'])(
    'by the surname: %s',
    (asked) => {
      const text = answered(judged, asked)
      expect(text).toMatch(/\bKH\b/)
      expect(text).not.toMatch(/In no entry|no entry has/)
    },
  )

  it('by a surname that is a word of the log too, only with its initial or its capital', () => {
    // The bore is wiped until it is dry and bright.
    expect(answered(judged, 'was the bore bright')).not.toMatch(/\bPB\b/)
    expect(answered(judged, 'was p bright there')).toMatch(/^PB P\. Bright, lead, is in no entry/)
    expect(answered(judged, 'was Bright there')).toMatch(/^PB P\. Bright/)
  })
})
