// What a review says of a STOP that nobody may release, of people who may still be in, and of figures that were put right or are void.
import { describe, expect, it } from 'vitest'
import { Walk } from '../../helpers/example.ts'
import { asPerson, only, reviewed, reviewOfEntries } from '../../helpers/reviewed.ts'
import { gate, LOCKS, NO_START, readOne, smallDefs, tell } from '../../helpers/small-job.ts'

describe('a STOP for a lock that was moved', () => {
  const walk = new Walk().toBore().keys('stop', '4', 'V-12 was opened', 'KH')
  const review = reviewed(walk)

  it('is offered no release, as it is never released', () => {
    const stop = only(review, 'stop')
    expect(stop.sentences.join(' ')).toMatch(/never released: a lead closes the job in it/)
    expect(only(review, 'open').sentences.join(' ')).not.toMatch(/release lets the job go on/)
    expect(stop.sentences.join(' ')).toContain('KH, who was not signed on; by the word of whoever keyed it')
  })

  it('leaves people who may be in open, until somebody keys that they are out', () => {
    expect(only(review, 'gate')).toMatchObject({ open: true })
  })
})

describe('readings that lay apart', () => {
  it('are not told of the figure that was put right since', () => {
    const walk = new Walk().toBore().keys('9.5033', '9.5027', '9.5032')
    expect(only(reviewed(walk), 'apart').sentences[0]).toBe(
      'The first 2 readings lay more than 0.0003 in apart, so it was read 1 time more.',
    )
    const of = walk.state.readings['bore.head_end.vertical']?.[1]?.seq ?? Number.NaN
    walk.bring({ do: 'correct', of, typed: '9.5033', why: 'misread' })
    expect(only(reviewed(walk), 'apart').sentences[0]).toMatch(
      /as they were keyed, and one was put right since/,
    )
  })
})

describe('an instrument found out of calibration', () => {
  it('voids readings and lines of hold points, each counted as what it is', () => {
    const walk = new Walk().toBore()
    walk.bring({ do: 'doubt-instrument', instrument: 'G-7', why: 'dropped', says: 'the laboratory' })
    expect(only(reviewed(walk), 'instrument').what).toMatch(
      /KH?.*; 6 lines of hold points void$|; 6 lines of hold points void$/,
    )
  })

  it('tells of what fell with it what was taken again since, with which instrument, and what was not', () => {
    const walk = new Walk(smallDefs([readOne('size'), readOne('other'), tell('end')]))
    walk.keys('RO', 'TC-401-1', '1', '9.5033', '9.5034')
    walk.bring({ do: 'doubt-instrument', instrument: 'M-3', why: 'dropped', says: 'the bench' })
    expect(only(reviewed(walk), 'instrument').sentences.slice(1)).toEqual([
      'NOT taken again: 1 size; 2 other.',
    ])
    const { length } = walk.entries
    const was = walk.entries.find((e) => e.type === 'reading.taken')
    if (was?.type !== 'reading.taken') throw new Error('it was read')
    // Read once more with another of its kind.
    const entries = asPerson([...walk.entries, { ...was, seq: length, instrument: 'M-12' }])
    const [found] = reviewOfEntries(walk.engine.defs, entries).exceptions.filter(({ what }) =>
      what.startsWith('M-3'),
    )
    const sentences = found?.sentences ?? []
    const [again, not] = sentences.slice(1)
    expect(again).toMatch(/^Taken again since: 1 size with M-12, RO 06:\d\d\.$/)
    expect(not).toBe('NOT taken again: 2 other.')
  })
})

describe('what still hangs when a job has ended', () => {
  const TAG = { id: 'tag', kind: 'numbers', of: 'tag', per: 'once', ask: 'The tag on the piston.' }

  it('says what a lead does about it', () => {
    const walk = new Walk(
      smallDefs([gate('stopped', ['start'], [LOCKS, TAG, NO_START]), tell('end', { exposes: ['start'] })]),
    )
    walk.keys('RO', 'TC-401-1', 'L-1', 'L-12', 'T-9', 'NO START', '')
    for (const { sentences } of reviewed(walk).exceptions.filter(({ kind }) => kind === 'hanging'))
      expect(sentences.at(-1)).toMatch(
        /Look at each, .*a lead puts what was seen on record, by barover remark\.$/,
      )
    expect(reviewed(walk).exceptions.filter(({ kind }) => kind === 'hanging')).toHaveLength(2)
    // Words of a lead that name each end the asking, and tell none of them off.
    const remark = (text: string) => walk.bring({ do: 'remark', text, person: 'KH', proved: true })
    remark('T-9 is in the rack; L-120 is another.')
    const [locks, tags] = reviewed(walk).exceptions.filter(({ kind }) => kind === 'hanging')
    expect(locks?.sentences.join()).not.toContain('Remark')
    expect(locks).toMatchObject({ open: true })
    expect(tags).toMatchObject({ open: false })
    expect(tags?.what).toMatch(/^Still on by the record: 1 tag, T-9; each remarked on by KH$/)
    expect(tags?.sentences.at(-2)).toMatch(
      /^Remarked on by KH .*, as said: T-9 is in the rack; L-120 is another\.$/,
    )
    expect(tags?.sentences.join(' ')).not.toMatch(/barover remark|is off|are off/)
    remark('L-12 was cut off.')
    const [half] = reviewed(walk).exceptions.filter(({ kind }) => kind === 'hanging')
    expect(half).toMatchObject({ open: true })
    expect(half?.sentences.slice(-2).join(' ')).toMatch(/^No remark names L-1\. .*by barover remark\.$/)
    remark('L-1 hangs in the board.')
    const [whole] = reviewed(walk).exceptions.filter(({ kind }) => kind === 'hanging')
    expect(whole).toMatchObject({ open: false })
  })
})
