// Questions before the crank is turned, at the decision of a lead and at the standard: told from the job, and from no passage that only
// shares a word with them.
import { describe, expect, it } from 'vitest'
import { askedAt } from '../../../src/core/talk/asked.ts'
import { answerTo } from '../../../src/core/talk/told.ts'
import { type Walk as Job, Walk } from '../../helpers/example.ts'

const NOW = { ms: Date.UTC(2026, 2, 14, 6, 30), offsetMin: 60 }
function said({ engine, state, prompt }: Job, line: string): string {
  // Heard as a question where it was keyed, and not only answered.
  const asked = askedAt(engine.defs, state, prompt, line)
  if (asked === null) throw new Error(`${line} is no question here`)
  return answerTo(engine.defs, state, asked, NOW).join('\n')
}

describe('whether the crank may be turned or the block come out', () => {
  const bore = new Walk().toBore()
  it.each([
    ...[
      'can I turn the crank a bit',
      'may i turn the crank',
      'can the crank be turned now',
      'how do I rotate it?',
    ],
    ...[
      'can we bar it over now',
      'can i take the block out',
      'should I remove the block',
      'can the block come out',
    ],
    ...['do we bar the machine over?', 'may the shaft be rotated now'],
  ])('%s', (line) => {
    expect(said(bore, line)).toMatch(
      /^The block stays in, and nobody turns the crank[^\n]*\nNo sheet of this job turns it or takes the block out\.\n(?:By the record, lock at barring.*\n)?By the record, block: BLOCKED BOTH WAYS, keyed 06:\d\d by RO; it stands\./,
    )
  })

  it('is another question than what a term means, or what happens if it turns', () => {
    expect(said(bore, 'what is bar over')).toContain('To turn a machine slowly by hand')
    expect(said(bore, 'what if it turns')).not.toMatch(/^The block stays in/)
  })
})

describe('at the decision of a lead', () => {
  const verdict = new Walk().toVerdict()
  it.each([
    ['what does accept do', /^accept: the part goes on as it is\./],
    ['what happens if I pick 5', /^concession: it runs on although/],
    [
      'what is the difference between rework and repair',
      /^The choice rework: it is worked on until it conforms[\s\S]*\nThe choice repair: [^\n]*\nTerms of the trade, repair:\n/,
    ],
  ])('%s is told of the choice and not of the verdict', (line, told) => {
    expect(said(verdict, line)).toMatch(told)
  })

  it.each(['what does MONITOR mean', 'difference between accept and monitor'])(
    '%s is of the verdict',
    (line) => {
      expect(said(verdict, line)).toMatch(/MONITOR/)
      expect(said(verdict, line)).not.toMatch(/^accept: the part/)
    },
  )

  it.each(['who may sign this', 'can RO accept it', 'may i decide?'])(
    '%s names the leads who did not measure',
    (line) => {
      expect(said(verdict, line)).toMatch(
        /Needed here: a lead who took none of the readings[^\n]*\nMay: KH K\. Haas/,
      )
    },
  )
})

it('why the ring of a gauge is measured is told of the standard, and of no piston ring', () => {
  const check = new Walk().throughGate().keys('1', '1', '71.2', '70.4', '1')
  expect(check.prompt).toMatchObject({ kind: 'read', step: { id: 'set_before' } })
  expect(said(check, 'why do i measure the ring')).toMatch(/^The standard is a size that is known/)
})

it('that a partner is gone is heard with what stands before the question', () => {
  expect(said(new Walk().toBore(), 'my partner went for lunch can I go on')).toMatch(
    /Nobody reaches in without somebody outside/,
  )
})

it('that a lock is missing is told as a point that is not shut off', () => {
  expect(said(new Walk().toGate(), 'what if a lock is missing?')).toMatch(
    /^A point without its lock is not shut off: nobody goes in/,
  )
})

it('what is done at a figure of the meter is told of the limit it is out of', () => {
  expect(said(new Walk().toBore(), 'what do I do when the meter shows 19 % LEL?')).toMatch(
    /OUT OF ITS LIMIT[\s\S]*everybody comes out and stands clear/,
  )
})
