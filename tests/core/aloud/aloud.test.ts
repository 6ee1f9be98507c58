// What a partner with both hands busy hears of a job: hazards first, figures read back, verdicts with the limit that governed.
import { expect, it } from 'vitest'
import { entryAloud, saidAloud } from '../../../src/core/aloud/of-entry.ts'
import { promptAloud } from '../../../src/core/aloud/of-prompt.ts'
import type { Entry } from '../../../src/core/job/entries.ts'
import { makeSafeLines } from '../../../src/core/talk/make-safe.ts'
import { GATE_LINES, Walk } from '../../helpers/example.ts'
import { walkExample } from '../../helpers/walked.ts'

const lastOf = (walk: Walk) => {
  const entry = walk.entries.at(-1)
  return entry === undefined ? null : entryAloud(walk.engine.defs, walk.state, entry)
}
const asked = (walk: Walk) => promptAloud(walk.engine.defs, walk.state, walk.talk).pieces

it('the hazard and what to do in trouble come before the step and what is asked', () => {
  const [hazard, title, ...rest] = asked(new Walk().toGate())
  expect(hazard).toMatchObject({ hazard: true, once: true })
  expect(hazard?.text).toMatch(
    /^Hazard: A start, a turn of the crank, or gas coming back can .*In trouble: Come out, stand clear/,
  )
  expect(title?.text).toMatch(/^Hold point/i)
  expect(rest.at(-1)).toMatchObject({ once: false })
  expect(rest.at(-1)?.text).toMatch(/Lock number at main driver breaker, E, one\.$/)
})

it('a reading is asked by its place, and its unit and instrument are said once', () => {
  const pieces = asked(new Walk().toBore())
  expect(pieces.map(({ text }) => text)).toContain('Reading.')
  expect(pieces.find(({ text }) => text.startsWith('inch, with M, three'))).toMatchObject({ once: true })
  expect(pieces.some(({ text }) => /^Bore, HEAD END/.test(text))).toBe(true)
})

it('a figure is read back as it was keyed, digit by digit, and how repeats agree', () => {
  const walk = new Walk().toBore().keys('9.5033')
  expect(lastOf(walk)?.text).toBe('nine point five zero three three inch.')
  walk.keys('9.5034')
  expect(walk.entries.findLast((e) => e.type === 'reading.taken')).toBeDefined()
  expect(lastOf(walk)?.text).toBe(
    'nine point five zero three four inch. spread zero point zero zero zero one.',
  )
})

it('a doubtful figure is said to be doubted, and what would fit comes with the ways on', () => {
  const walk = new Walk().toBore().keys('9.053')
  expect(lastOf(walk)).toEqual({ text: 'nine point zero five three inch is doubted.', warning: false })
  expect(asked(walk).at(-1)?.text).toMatch(/1: measure again\. 2: mistyped: key it again in full\./)
})

it('STOP, what fell and a failed gas test are warnings', () => {
  const stopped = new Walk().toBore().keys('stop')
  const heard = (type: Entry['type']) => {
    const entry = stopped.entries.find((one) => one.type === type)
    return entry === undefined ? null : entryAloud(stopped.engine.defs, stopped.state, entry)
  }
  expect(heard('stop.raised')?.warning).toBe(true)
  expect(heard('stop.raised')?.text).toMatch(
    /^STOP\. Everybody out and clear\. Nothing goes on\. Radio channel 1/,
  )
  const lapsed = new Walk().toBore().wait(31).keys('')
  const closed = lapsed.entries.find((e) => e.type === 'gate.closed')
  expect(closed && entryAloud(lapsed.engine.defs, lapsed.state, closed)).toMatchObject({ warning: true })
  const failed = new Walk().toGate().keys(...GATE_LINES.slice(0, 11), '17')
  const bad = failed.entries.find((e) => e.type === 'evidence.failed')
  const said = bad === undefined ? null : entryAloud(failed.engine.defs, failed.state, bad)
  expect(said?.warning).toBe(true)
  expect(said?.text).toContain('FAILED: ')
  expect(said?.text).toContain('one seven percent by volume')
})

it('of a verdict the word and the limit that governed are said', () => {
  const said: string[] = []
  walkExample((walk) => {
    for (const entry of walk.entries.slice(-3))
      if (entry.type === 'verdict.given')
        said.push(entryAloud(walk.engine.defs, walk.state, entry)?.text ?? '')
  })
  expect(said[0]).toMatch(/^Verdict on .*: MONITOR\. .* governs: zero point zero zero \w+ \w+ of zero point/)
})

it('the make-safe sheet is a warning; an answer is none', () => {
  const walk = new Walk().toBore()
  const { defs } = walk.engine
  expect(saidAloud(defs, makeSafeLines(defs, walk.state)).warning).toBe(true)
  expect(saidAloud(defs, ['There are no readings yet.'])).toEqual({
    text: 'There are no readings yet.',
    warning: false,
  })
})

it('figures keyed for the tag of the plate may be a PIN and are not said', () => {
  const walk = new Walk().keys('RO', '4071')
  const wrong = walk.entries.find((e) => e.type === 'machine.mismatched')
  expect(wrong).toBeDefined()
  expect(lastOf(walk)?.text).not.toContain('four zero seven one')
  expect(lastOf(walk)?.warning).toBe(true)
})

it('no prompt and no entry of the whole example leaves a sign or a symbol to be guessed', () => {
  const heard: string[] = []
  walkExample((walk) => {
    heard.push(...asked(walk).map(({ text }) => text), lastOf(walk)?.text ?? '')
  })
  expect(heard.length).toBeGreaterThan(100)
  for (const text of heard) expect(text).not.toMatch(/degF|psi\b|\bLEL|\bin\)|[[\]()%/=+#|]/)
})
