// Choices of a decision by number and by word: a number means the same whatever is open.
import { describe, expect, it } from 'vitest'
import { offersFor } from '../../../src/core/job/admit-disposition.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { offerLines, pickedOffer } from '../../../src/core/talk/offered.ts'
import { Walk } from '../../helpers/example.ts'

const ALL = ['accept', 'rework', 'repair', 'replace', 'concession', 'hold']

describe('a choice of a decision', () => {
  it.each(['ACCEPT', 'MONITOR', 'REWORK', 'REPLACE', 'HOLD'])('has its own number for %s', (verdict) => {
    const offers = offersFor(verdict, ALL)
    expect(offers.map(({ choice }) => choice)).toEqual(ALL)
    expect(pickedOffer(offers, '2')).toEqual({ choice: 'rework' })
    expect(pickedOffer(offers, '5')).toEqual({ choice: 'concession' })
  })

  it('that is not open says why, where it stands and where it is keyed', () => {
    const offers = offersFor('HOLD', ALL)
    expect(offerLines(offers)[0]).toBe('1  accept: NOT OPEN, it could not be judged')
    expect(pickedOffer(offers, '1')).toEqual({ no: expect.stringContaining('it could not be judged') })
    expect(pickedOffer(offersFor('REPLACE', ALL), 'accept')).toEqual({
      no: expect.stringContaining('it is past its limit, REPLACE'),
    })
  })

  it.each([
    ['rework', 'rework'],
    [' ReW ', 'rework'],
    ['con', 'concession'],
    ['repl', 'replace'],
  ])('is chosen by %j', (line, choice) => {
    expect(pickedOffer(offersFor('MONITOR', ALL), line)).toEqual({ choice })
  })

  it.each([
    ['re', 'Is it rework, repair or replace?'],
    ['rep', 'Is it repair or replace?'],
    ['r', 'or one of the words behind them'],
    ['0', 'or one of the words behind them'],
    ['7', 'or one of the words behind them'],
    ['scrap', 'or one of the words behind them'],
  ])('is not chosen by %j', (line, no) => {
    expect(pickedOffer(offersFor('MONITOR', ALL), line)).toEqual({ no: expect.stringContaining(no) })
  })

  it('is heard at the decision', () => {
    const walk = new Walk().toVerdict().keys('rework')
    expect(walk.talk.ask).toMatchObject({ kind: 'dispose-who', choice: 'rework' })
    const view = promptView(walk.engine.defs, walk.state, new Walk().talk, {
      width: 79,
      record: 'EXAMPLE',
      ascii: false,
    })
    expect(view.ask.map(({ text }) => text)).toContain('6  hold: NOT OPEN, it was judged, MONITOR')
  })
})
