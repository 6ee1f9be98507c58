// On whose authority a concession stands, from which hours it counts, and when it ends.
import { describe, expect, it } from 'vitest'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { entryBlocks } from '../../../src/core/sheet/shown-block.ts'
import { Walk } from '../../helpers/example.ts'

const STYLE = { width: 79, record: 'EXAMPLE' as const, ascii: false }
const toAuthority = () => new Walk().toVerdict().keys('concession', 'KH', 'worn but runs')
const rows = (walk: Walk) =>
  promptView(walk.engine.defs, walk.state, walk.talk, STYLE).ask.map(({ text }) => text)

describe('the authority of a concession', () => {
  it.each([
    ['the lead who decides', 'KH', 'own-authority'],
    ['who keys', 'ro', 'own-authority'],
    ['who keys, with words about it', 'RO on the phone', 'own-authority'],
    ['nobody named', 'myself', 'own-authority'],
    ['a word that names nobody', 'engineering', 'no-authority'],
    ['a trainee', 'TS', 'no-authority'],
    ['somebody without a name', 'the boss', 'no-authority'],
    ['who keys it, in words', 'I say so, third figure is a slip', 'own-authority'],
    ['a part somebody has', 'our site manager', 'no-authority'],
    ['who keys, in two words', 'my own', 'own-authority'],
    ['who keys, by their say', 'on my own authority', 'own-authority'],
    ['who keys, with a figure', 'me 2', 'own-authority'],
    ['the lead who decides, with a figure', 'KH 12', 'own-authority'],
    ['nobody, in two words', 'none given', 'no-authority'],
    ['nobody yet', 'to be decided', 'no-authority'],
    ['nobody, with a figure', 'tbd 1', 'no-authority'],
    ['a running time', '4000 h', 'no-authority'],
    ['a running time in words', 'for 4 000 running hours', 'no-authority'],
    ['a day', '2026-09-14', 'no-authority'],
    ['a day in words', '14 September 2026', 'no-authority'],
  ])('is not %s', (_who, line, code) => {
    const walk = toAuthority()
    expect(walk.key(line)).toBe(code)
    expect(walk.talk.ask?.kind).toBe('concession-authority')
    const input = {
      do: 'dispose',
      step: 'disposition',
      choice: 'concession',
      person: 'KH',
      why: 'runs',
    } as const
    expect(walk.bring({ ...input, authority: line, until: '2027-01-01' })).toBe(code)
  })

  it('is no mechanic of the crew', () => {
    expect(toAuthority().key('ML')).toBe('no-authority')
  })

  it.each([
    'PB',
    'Ada Moss, site engineer',
    'letter 12 of KH',
    'I-12',
    'No. 4711',
    'letter of 2026-02-01',
    'H 4000',
    'our engineer Ada Moss',
  ])('may be %s', (line) => {
    expect(toAuthority().keys(line).talk.ask?.kind).toBe('concession-until')
  })

  it('says at the prompt whose it may be', () => {
    expect(rows(toAuthority()).join(' ')).toContain('Somebody else than who keys, decides or did the work')
  })
})

describe('a concession for a running time', () => {
  const toUntil = () => toAuthority().keys('PB')

  it('says what it counts from, and asks the counter where the job has not read it', () => {
    const walk = toUntil()
    expect(rows(walk)).toContainEqual(
      expect.stringMatching(/^Counter of the machine: not read on this job; \d+ h/),
    )
    walk.keys('4000 h')
    expect(walk.talk.ask?.kind).toBe('concession-from')
    expect(walk.key('soon')).toBe('hours-from')
    expect(walk.key('12')).toBe('hours-before')
    walk.keys('91000')
    expect(walk.last).toMatchObject({ type: 'disposition.set', valid: { hours: 4000, from: 91_000 } })
  })

  it('has its end in the closing line', () => {
    const walk = toUntil().keys('4000 h', '91000', '')
    expect(walk.last.type).toBe('job.closed')
    const text = entryBlocks(walk.engine.defs, walk.state, walk.last, STYLE).flatMap((b) =>
      b.rows.map((r) => r.text),
    )
    expect(text[0]).toBe('Job closed with MONITOR. Runs on by concession: NC-1 until 95000 h on the counter.')
    expect(text).toContain(
      '  NC-1 Bore judged: MONITOR; runs on by concession of PB, for 4000 running hours from 91000 h, to 95000 h on the counter, decided by KH',
    )
  })

  it('asks no counter for a day', () => {
    expect(toUntil().keys('2027-01-01').last).toMatchObject({ valid: { until: '2027-01-01' } })
  })
})

describe('an end further off than a year', () => {
  const toUntil = () => toAuthority().keys('PB')
  const input = {
    do: 'dispose',
    step: 'disposition',
    choice: 'concession',
    person: 'KH',
    why: 'runs',
  } as const

  it.each(['2099-01-01', '2027-03-16', '8761 h'])(
    '%s, further off than a year, wants its reason',
    (until) => {
      const walk = new Walk().toVerdict()
      const given = { ...input, authority: 'PB', until, from: '91000' }
      expect(walk.bring(given)).toBe('far-end')
      expect(walk.bring({ ...given, far: '...' })).toBe('far-end')
      expect(walk.bring({ ...given, far: 'next outage is then' })).toBeNull()
      expect(walk.last).toMatchObject({ why: 'runs; longer than a year, because: next outage is then' })
    },
  )

  it.each(['2027-03-14', '8760 h'])('%s is within it', (until) => {
    expect(new Walk().toVerdict().bring({ ...input, authority: 'PB', until, from: '91000' })).toBeNull()
  })

  it('is asked about at the prompt: another end, or kept with the reason', () => {
    const walk = toUntil().keys('2099-01-01')
    expect(walk.talk.ask?.kind).toBe('concession-far')
    expect(walk.copy().keys('1').talk.ask?.kind).toBe('concession-until')
    expect(walk.keys('2').talk.ask?.kind).toBe('concession-far')
    expect(walk.keys('the unit is only a spare').last).toMatchObject({
      type: 'disposition.set',
      valid: { until: '2099-01-01' },
    })
    const hours = toUntil().keys('9000 h', '91000')
    expect(hours.talk.ask?.kind).toBe('concession-far')
    expect(hours.keys('the unit is only a spare').last).toMatchObject({
      valid: { hours: 9000, from: 91_000 },
    })
  })
})

describe('a concession of what could not be judged', () => {
  it('shows what is not known where the reason is asked', () => {
    const walk = new Walk().toVerdict()
    const was = walk.state.verdicts.bore_judged
    if (was === undefined) throw new Error('not judged')
    const result = {
      ...was.verdict.result,
      verdict: 'HOLD',
      holds: ['The strip was not measured.', 'Nor the check.'],
    }
    const verdict = { ...was.verdict, result } as typeof was.verdict
    walk.state = { ...walk.state, verdicts: { bore_judged: { ...was, verdict } } }
    const shown = rows(walk.keys('concession', 'KH')).join('\n')
    expect(shown).toContain('Not known: The strip was not measured; and 1 more.')
    expect(shown).toContain('nobody knows whether it is inside its limits')
    expect(rows(toAuthority()).join('\n')).not.toContain('Not known')
  })
})
