// Wear from figures that were measured on HOLD: marked beside the figure wherever it is told, and a baseline made of them is named.
import { describe, expect, it } from 'vitest'
import { leftFigures } from '../../../src/core/job/adopt.ts'
import { fold } from '../../../src/core/job/fold.ts'
import { changesSection } from '../../../src/core/report/paper-front.ts'
import {
  changesInFew,
  changesInFull,
  changesInWords,
  reachedText,
} from '../../../src/core/review/changes-rows.ts'
import { reviewJson } from '../../../src/core/review/json.ts'
import { wayOn } from '../../../src/core/review/page.ts'
import { Walk } from '../../helpers/example.ts'
import { offGauge } from '../../helpers/off-gauge.ts'
import { reported } from '../../helpers/reported.ts'
import { only, reviewed } from '../../helpers/reviewed.ts'

const sound = () => new Walk().toVerdict().keys('1', 'KH', 'read again, none given', '')
/** The section of it, as data in one line. */
const sectionText = (walk: Walk) => JSON.stringify(changesSection(reported(walk)))
const texts = (rows: readonly { readonly text: string }[]) => rows.map(({ text }) => text)

describe('wear from figures measured on HOLD, in a review', () => {
  const walk = offGauge()
  const { defs } = walk.engine
  const review = reviewed(walk)

  it('has a mark at the figure, and why below the thing', () => {
    const full = texts(changesInFull(defs, review.changes))
    expect(full.filter((line) => /9\.50\d\d +9\.50\d\d\*/.test(line))).toHaveLength(6)
    expect(full.join(' ')).toMatch(/\* FOUND ON HOLD, no wear told from it is to be trusted: 18 Bore judged/)
    const few = texts(changesInFew(defs, review.changes, 15))
    expect(few.join('\n')).toMatch(/\*.*\n {2}\* FOUND ON HOLD.*18 Bore judged \(entry \d+\)$/)
    expect(texts(changesInFull(defs, reviewed(sound()).changes)).join(' ')).not.toMatch(/\*|ON HOLD/)
  })

  it('says it in words and in data', () => {
    const words = texts(changesInWords(defs, review.changes))
    expect(words.filter((line) => /found 9\.50\d\d ON HOLD/.test(line))).toHaveLength(6)
    const told = reviewJson(review).changes.map(({ held }) => held.found)
    expect(told).toHaveLength(6)
    for (const one of told) expect(one).toMatch(/^18 Bore judged/)
  })

  it('says it beside hours to come', () => {
    const limit = { characteristic: 'largest-diameter', value: 0.242, source: 'x' }
    const outlook = { earliest: 1000, of: limit, now: null } as unknown as Parameters<typeof reachedText>[1]
    expect(reachedText(defs, { ...outlook, held: 'x' })).toContain('BY A FIGURE THAT WAS MEASURED ON HOLD')
    expect(reachedText(defs, { ...outlook, held: null })).not.toContain('HOLD')
  })

  it('says that it is nothing to adopt', () => {
    expect(wayOn(review)[0]).toContain('What was measured on HOLD is none of it.')
    expect(wayOn(reviewed(sound()))[0]).not.toContain('HOLD')
  })
})

describe('wear from figures measured on HOLD, in a report', () => {
  it('stands beside the figure and below the table', () => {
    const text = sectionText(offGauge())
    expect(text.match(/9\.50\d\d HOLD/g)?.length).toBeGreaterThanOrEqual(6)
    expect(text).toMatch(
      /bore diameter, found on HOLD, no wear told from it is to be trusted: 18 Bore judged/,
    )
    expect(sectionText(sound())).not.toMatch(/HOLD/)
  })
})

describe('a baseline adopted from such figures by an earlier version', () => {
  it('is named, open, with what is left to do', () => {
    const walk = offGauge()
    const { figures } = leftFigures(sound().engine.defs, sound().state)
    const entry = {
      type: 'left.adopted',
      hours: 61_000,
      renewed: [],
      figures,
      without: [],
      file: { name: 'next.yaml', sha256: '00' },
      person: 'PB',
      signed: 'pin',
      seq: walk.entries.length,
      at: walk.last.at,
      by: 'PB',
    } as const
    walk.entries.push(entry)
    walk.state = fold(walk.state, entry)
    const found = only(reviewed(walk), 'baseline')
    expect(found.what).toMatch(/^BASELINE ADOPTED FROM FIGURES THAT WERE MEASURED ON HOLD, .*next\.yaml$/)
    expect(found.open).toBe(true)
    expect(found.sentences.join(' ')).toMatch(
      /Bore diameter: it was measured on HOLD.*Take these figures out/,
    )
    const good = sound()
    good.entries.push({ ...entry, seq: good.entries.length })
    good.state = fold(good.state, { ...entry, seq: good.entries.length - 1 })
    expect(reviewed(good).exceptions.filter(({ kind }) => kind === 'baseline')).toEqual([])
  })
})
