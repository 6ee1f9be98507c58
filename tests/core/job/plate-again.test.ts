// The plate on the cylinder: read anew where a job is taken up, and asked about where it is only spelled otherwise.
import { describe, expect, it } from 'vitest'
import { foot } from '../../../src/core/sheet/foot.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { takenUpRows } from '../../../src/core/sheet/taken-up-rows.ts'
import { deskOf } from '../../../src/core/talk/desk-words.ts'
import { LOCK_LINES, Walk } from '../../helpers/example.ts'

const style = { width: 79, record: 'EXAMPLE', ascii: true } as const
const view = ({ engine, state, talk }: Walk) => promptView(engine.defs, state, talk, style)
const asked = (walk: Walk) => view(walk).ask.map(({ text }) => text)

function takenUp(walk: Walk, how: 'left' | 'killed' = 'left'): Walk {
  if (how === 'left') walk.bring({ do: 'leave' })
  walk.bring({ do: 'take-up' })
  return walk
}

describe('a job that is taken up', () => {
  it.each(['left', 'killed'] as const)('was %s: the plate is read before the next work', (how) => {
    const walk = takenUp(new Walk().toGate().keys('L-101', 'L-102'), how)
    expect(takenUpRows(walk.engine.defs, walk.state).at(-2)?.text).toContain('then the plate')
    walk.keys('RO')
    expect(walk.prompt.kind).toBe('tag')
    expect(view(walk).title).toBe('Which machine do you stand at now?')
    // Nothing of a tag stands at hand to be copied.
    expect(foot(walk.engine.defs, walk.state, walk.now).text).not.toContain('TC-401')
    expect(
      walk.bring({ do: 'evidence', step: 'hold_point', item: 'locks.breaker', typed: 'L-101' }),
    ).not.toBeNull()
    walk.keys('RG-27-1')
    expect(walk.last).toMatchObject({ type: 'machine.mismatched', typed: 'RG-27-1' })
    expect(walk.prompt.kind).toBe('tag')
    walk.keys('TC-401-1')
    expect(walk.prompt.kind).toBe('evidence')
    expect(foot(walk.engine.defs, walk.state, walk.now).text).toContain('TC-401-1')
    walk.keys(...LOCK_LINES)
    expect(Object.keys(walk.state.gates.hold_point?.given ?? {})).toHaveLength(LOCK_LINES.length)
  })

  it('takes no reading at another machine, and loses none that stands', () => {
    const walk = takenUp(new Walk().toBore().keys('9.5033'))
    walk.keys('RO')
    expect(walk.prompt.kind).toBe('tag')
    // It is said at once; that they are out is said of the machine that was read.
    expect(asked(walk)[0]).toBe('COME OUT AND STAND CLEAR.')
    const stood = Object.values(walk.state.readings).flat().length
    expect(walk.bring({ do: 'read', place: 'bore.head.tb', typed: '9.5034' })).not.toBeNull()
    expect(Object.values(walk.state.readings).flat()).toHaveLength(stood)
    // Nor is anything changed before that.
    expect(walk.bring({ do: 'reopen', step: 'brief', why: 'because' })).toBe('plate-first')
    walk.keys('correct')
    expect(walk.talk.ask).toBeNull()
  })

  it('that a lead took up at a desk takes no work there, and leaves the plate to be read', () => {
    const walk = new Walk().toGate().keys('L-101')
    walk.bring({ do: 'leave' })
    walk.bring({ do: 'take-up', desk: true })
    walk.keys('KH')
    expect(walk.prompt.kind).toBe('tag')
    const typed = { do: 'evidence', step: 'hold_point', item: 'locks.breaker', typed: 'L-101' } as const
    expect(walk.bring(typed)).not.toBeNull()
    takenUp(walk).keys('RO')
    expect(walk.prompt.kind).toBe('tag')
  })

  it('asks a lead at a desk, who only decides, for no plate', () => {
    const walk = new Walk().toVerdict()
    expect(walk.prompt.kind).toBe('decide')
    expect(deskOf(walk.engine.defs, walk.state).acts.map(({ word }) => word)).toContain('dispose')
    walk.bring({ do: 'leave' })
    walk.bring({ do: 'take-up', desk: true })
    expect(walk.keys('KH').prompt.kind).toBe('decide')
  })
})

describe('a tag that is only spelled otherwise', () => {
  it.each(['TC4011', 'tc401-1', 'TC/401.1'])('%s is asked about, and kept as it was keyed', (typed) => {
    const walk = new Walk().keys('RO', typed)
    expect(walk.entries.map(({ type }) => type)).not.toContain('machine.mismatched')
    expect(asked(walk)[0]).toBe(`${typed} was keyed. Is TC-401-1 meant, does the plate read that?`)
    walk.keys('y')
    expect(walk.state.machineNamed).toBe(false)
    walk.keys('1')
    expect(walk.last).toMatchObject({ type: 'machine.named', typed })
  })

  it('that is only its beginning is no wrong machine before somebody says that it is all', () => {
    const walk = new Walk().keys('RO', 'TC401')
    expect(asked(walk).join(' ')).not.toContain('TC-401-1')
    walk.keys('1')
    expect(walk.prompt.kind).toBe('tag')
    expect(walk.entries.map(({ type }) => type)).not.toContain('machine.mismatched')
    walk.keys('TC401', '2')
    expect(walk.last).toMatchObject({ type: 'machine.mismatched', typed: 'TC401' })
  })

  it('keyed whole at the question about a part of it is taken', () => {
    expect(new Walk().keys('RO', 'TC401', 'TC-401-1').last).toMatchObject({ type: 'machine.named' })
  })

  it.each([
    '1',
    'I cannot read the plate',
    'plate is painted over',
    'nonsense here',
    'nonsense',
    'is 18 ok',
    'what is 402',
  ])('%s is asked about first, as it may be no tag', (typed) => {
    const walk = new Walk().keys('RO', typed)
    expect(walk.last.type).toBe('person.signed-on')
    expect(asked(walk)[0]).toContain('a lead finds out which machine it is')
    expect(walk.copy().keys('1').prompt.kind).toBe('tag')
    expect(walk.keys('2').last).toMatchObject({ type: 'machine.mismatched', typed })
  })

  it('is not in the way of the tag of another machine that is keyed after it: that goes on record', () => {
    const walk = new Walk().keys('RO', 'hwat do i do here', 'TC-401-2')
    expect(walk.last).toMatchObject({ type: 'machine.mismatched', typed: 'TC-401-2' })
    const same = new Walk().keys('RO', 'hwat do i do here', 'TC-401-1')
    expect(same.state.machineNamed).toBe(true)
    const sentence = new Walk().keys('RO', 'hwat do i do here', 'it is painted over')
    expect(sentence.last.type).toBe('person.signed-on')
  })

  it.each(['TC-402-1', 'TC-401-2', 'TC 401 11', '401-1'])(
    '%s is another, and goes on record at once',
    (typed) => {
      const walk = new Walk().keys('RO', typed)
      expect(walk.last).toMatchObject({ type: 'machine.mismatched', typed })
    },
  )

  it('is no plate to the engine unless it is said to be meant', () => {
    const walk = new Walk().keys('RO')
    expect(walk.bring({ do: 'name-machine', typed: 'TC4011' })).toBeNull()
    expect(walk.last).toMatchObject({ type: 'machine.mismatched' })
    walk.bring({ do: 'name-machine', typed: 'TC-402-1', meant: true })
    expect(walk.state.machineNamed).toBe(false)
  })
})
