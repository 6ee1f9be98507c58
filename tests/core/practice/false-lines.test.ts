// What was keyed at a hold point and is not so never looks done: not in its box, not in the list, not on the page.
import { describe, expect, it } from 'vitest'
import { asKind, stepById } from '../../../src/core/job/definitions.ts'
import { evidenceByKey } from '../../../src/core/job/gate.ts'
import { falseLines } from '../../../src/core/practice/false-lines.ts'
import { entryBlock } from '../../../src/core/sheet/entry-block.ts'
import { evidenceView } from '../../../src/core/sheet/evidence-view.ts'
import { showLines } from '../../../src/core/talk/gate-list.ts'
import { GAS_LINES, LOCK_LINES, Walk, WORD_LINES } from '../../helpers/example.ts'
import { careful, careless, defsOf, seedHiding, session, type Trainee } from '../../helpers/trainees.ts'

const defs = defsOf('isolation')

function boxes(walk: Walk): string[] {
  const { prompt } = walk
  if (prompt.kind !== 'evidence') throw new Error(`no hold point: ${prompt.kind}`)
  return (evidenceView(defs, walk.state, prompt).rows ?? []).map(({ text }) => text)
}

function upTo(id: string, level: 1 | 3, item: string, trainee: Trainee): Walk {
  const stops: Trainee = (walk) =>
    walk.prompt.kind === 'evidence' && walk.prompt.item.evidence.id === item ? false : trainee(walk)
  return session(seedHiding(id, level, defs), level, stops, defs).walk
}

describe('a lock that hangs open, keyed as if it were shut', () => {
  const walk = upTo('lock-open', 3, 'try_start', careless)
  const gate = asKind(stepById(defs, 'isolation'), 'gate')
  const locks = walk.entries.filter(
    (one) => one.type === 'evidence.given' && evidenceByKey(gate, one.item)?.kind === 'locks',
  )

  it('is told as FALSE in the box and in the list, and is not among what was shown', () => {
    const [key = ''] = falseLines(defs, walk.state, gate)
    expect(falseLines(defs, walk.state, gate)).toHaveLength(1)
    const given = Object.keys(walk.state.gates.isolation?.given ?? {}).length
    const told = boxes(walk)
    expect(told[0]).toMatch(new RegExp(`^\\[x\\] ${given - 1} of \\d+ shown`))
    expect(told[1]).toMatch(/^\[FALSE\] lock at /)
    expect(showLines(defs, walk.state).join('\n')).toMatch(/FALSE, as you keyed it: /)
    expect(key).not.toBe('')
  })

  it('has no cross in its own line of the sheet, and the others have', () => {
    const crosses = locks.map((entry) => {
      const block = entryBlock(defs, walk.state, entry, 60)
      return block?.rows.map(({ text }) => text).join(' ') ?? ''
    })
    expect(crosses.filter((text) => text.includes('[FALSE]'))).toHaveLength(1)
    expect(crosses.filter((text) => text.includes('[x]'))).toHaveLength(locks.length - 1)
  })
})

it('what is false stands before the witness beside all that is listed as shown', () => {
  const walk = upTo('lock-open', 3, 'witness', careless)
  if (walk.prompt.kind !== 'evidence') throw new Error('no hold point')
  const ask = (evidenceView(defs, walk.state, walk.prompt).ask ?? []).map(({ text }) => text)
  expect(ask).toContainEqual(
    expect.stringMatching(/^FALSE among these: .*lock at .*\. Nobody signs for that\.$/),
  )
  // A job that is no practice has nothing to hold it against.
  const job = new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES, ...GAS_LINES)
  if (job.prompt.kind !== 'evidence') throw new Error('no hold point')
  const real = (evidenceView(job.engine.defs, job.state, job.prompt).ask ?? []).map(({ text }) => text)
  expect(real.join(' ')).not.toMatch(/FALSE/)
})

it('locks are unproved once the start was tried and it turned, and not before', () => {
  const walk = upTo('driver-live', 1, 'try_start', careful)
  expect(boxes(walk).join('\n')).not.toMatch(/unproved|FALSE/)
  const shown = Number(/^\[x\] (\d+)/.exec(boxes(walk)[0] ?? '')?.[1])
  walk.key('look')
  const told = boxes(walk)
  expect(told.join('\n')).toMatch(/\[unproved\] 6 locks: the start was tried, and it turned/)
  expect(Number(/^\[x\] (\d+)/.exec(told[0] ?? '')?.[1])).toBe(shown - 6)
})

it('nothing of it is told where all was seen and keyed as it is', () => {
  const walk = upTo('bleed-blows', 1, 'bleeds', careful)
  expect(boxes(walk).join('\n')).not.toMatch(/FALSE|unproved/)
})
