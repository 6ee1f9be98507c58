// Who did it, and when, in what a lead reads: of a STOP who called it, of a word by radio who heard it and whether it is countersigned, of a
// figure that was put right the time of what stands.
import { describe, expect, it } from 'vitest'
import { paperOf } from '../../../src/core/report/paper-of.ts'
import { reportText } from '../../../src/core/report/write/text.ts'
import { Walk } from '../../helpers/example.ts'
import { reported } from '../../helpers/reported.ts'
import { only, reviewed } from '../../helpers/reviewed.ts'

const textOf = (walk: Walk) =>
  reportText(paperOf(reported(walk)))
    .replace(/^EXAMPLE[^│]*│ +/gm, '')
    .replace(/\s+/g, ' ')

function byRadio(agrees: boolean | null): Walk {
  const walk = new Walk().toVerdict().keys('sign on', 'ML')
  walk.keys('1', 'radio', 'KH', 'run it, none given', 'ML')
  if (agrees !== null) walk.bring({ do: 'countersign', person: 'KH', agrees })
  return walk
}

describe('a decision by radio', () => {
  it('says who heard it and that it is not countersigned yet, in the list and on the report', () => {
    const walk = byRadio(null)
    const { what, sentences } = only(reviewed(walk), 'verdict')
    expect(what).toMatch(/decided by KH by radio, heard by ML, NOT YET COUNTERSIGNED: accept$/)
    expect(sentences.join(' ')).toMatch(
      /accept, by KH by radio, heard and keyed by ML, NOT YET COUNTERSIGNED, 06:\d\d/,
    )
    expect(textOf(walk)).toMatch(
      /accepted as it is, decided by KH by radio, heard by ML, NOT YET COUNTERSIGNED/,
    )
  })

  it('says that it was countersigned, when and by whom', () => {
    const walk = byRadio(true)
    const { what, sentences } = only(reviewed(walk), 'verdict')
    expect(what).toMatch(/heard by ML, countersigned by KH: accept$/)
    expect(sentences.join(' ')).toMatch(/heard and keyed by ML, countersigned by KH 06:\d\d/)
    expect(textOf(walk)).toMatch(/decided by KH by radio, heard by ML, countersigned by KH/)
  })
})

describe('a STOP', () => {
  it('raised with nobody signed on says who called it and signed', () => {
    const walk = new Walk()
    walk.key('stop')
    const [stop] = walk.state.stops
    walk.bring({
      do: 'explain-stop',
      of: stop?.seq ?? 0,
      cause: 'gas',
      why: 'it smells',
      calledBy: 'KH',
    })
    expect(only(reviewed(walk), 'stop').what).toMatch(/^STOP called by KH, nobody signed on, 06:\d\d: gas/)
  })
})

describe('a figure that was put right', () => {
  it('stands in the table with the time it was keyed anew, and not of the first', () => {
    const walk = new Walk().toVerdict()
    const one = walk.entries.find((e) => e.type === 'reading.taken' && e.place.includes('.centre.'))
    walk.now = { ...walk.now, ms: walk.now.ms + 600_000 }
    walk.bring({ do: 'correct', of: one?.seq ?? 0, typed: '9.5067', why: 'misread' })
    const put = walk.entries.find(({ type }) => type === 'reading.corrected')
    expect(textOf(walk)).toContain(`corrected RO ${put?.at.slice(11, 19)}`)
    expect(one?.at).toBeDefined()
    // The repeat of it stands as it was read.
    expect(textOf(walk)).not.toContain(`RO ${one?.at.slice(11, 19)}; corrected`)
  })
})
