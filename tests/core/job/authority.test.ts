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

  it.each(['PB', 'Ada Moss, site engineer', 'letter 12 of KH'])('may be %s', (line) => {
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
