// The words where and next: at any moment, to be read only, and nothing of them on record.
import { describe, expect, it } from 'vitest'
import { layOut, plainText } from '../../../src/core/sheet/block.ts'
import { saidBlock } from '../../../src/core/sheet/shown-block.ts'
import { hear } from '../../../src/core/talk/hear.ts'
import { nextLines, stepsAhead } from '../../../src/core/talk/next-steps.ts'
import { whereLines } from '../../../src/core/talk/where.ts'
import { LOCK_LINES, Walk } from '../../helpers/example.ts'
import { rawProcedure, smallDefs, tell } from '../../helpers/small-job.ts'
import { exampleAnswers, walkExample } from '../../helpers/walked.ts'

const where = (walk: Walk) => whereLines(walk.engine.defs, walk.state, walk.now).join('\n')
const coming = (walk: Walk) => nextLines(walk.engine.defs, walk.state).join('\n')

describe('where', () => {
  it('before anybody signed on says so, and keeps the tag to itself until the plate was read', () => {
    const text = where(new Walk())
    expect(text).toContain('Sheet 1 of 20, Before anyone goes near the bore')
    expect(text).toContain('Nobody is at the keyboard')
    for (const walk of [new Walk(), new Walk().keys('RO')]) {
      expect(where(walk)).not.toContain('TC-401-1')
      expect(coming(walk)).not.toContain('TC-401-1')
    }
    expect(where(new Walk().keys('RO', 'TC-401-1'))).toContain('Bore or liner inspection on TC-401-1')
  })

  it('at a hold point tells how much of it was shown', () => {
    const walk = new Walk().toGate()
    expect(where(walk)).toContain('Hold point 2: nothing shown yet.')
    walk.keys(...LOCK_LINES)
    expect(where(walk)).toContain('Hold point 2: not complete yet, 6 of 17 shown.')
    expect(where(walk)).toContain('Done: 1 of ')
  })

  it('at a reading tells how old the gas test is and when it lapses, by the clock of the moment', () => {
    const walk = new Walk().toBore()
    expect(where(walk)).toContain('Sheet 7 of 20, Bore')
    const [, age, at] = /complete; gas test (\d+) min old, lapses (\d\d:\d\d)\./.exec(where(walk)) ?? []
    walk.wait(5)
    expect(where(walk)).toContain(`gas test ${Number(age) + 5} min old, lapses ${at}.`)
    expect(where(walk)).not.toMatch(/\b(?:good|safe|fine|OK)\b/)
    walk.wait(30)
    expect(where(walk)).toContain(`lapsed ${at}`)
    walk.keys('')
    expect(where(walk)).toMatch(/Hold point 2: FALLEN, asked again/)
  })

  it('is heard with the moment it is asked at', () => {
    const walk = new Walk().toBore()
    const later = { ...walk.now, ms: walk.now.ms + 9 * 60_000 }
    const say = (now?: typeof later) =>
      hear(walk.engine.defs, walk.state, walk.talk, 'where', now).say.join('\n')
    expect(say(later)).not.toBe(say())
    expect(say(later)).toBe(whereLines(walk.engine.defs, walk.state, later).join('\n'))
  })

  it('under STOP says so first', () => {
    const walk = new Walk().toBore().keys('stop')
    expect(where(walk)).toMatch(/^STOP is open: nothing goes on until it is released\./)
    expect(coming(walk)).toMatch(/^STOP is open: none of this until it is released\./)
    expect(where(walk)).toContain('Sheet 7 of 20')
  })

  it('names the parts that a sheet stands in', () => {
    const opened = rawProcedure([tell('look')], { procedure: 'opened' })
    const part = { id: 'p', kind: 'part', title: 'Cylinder opened', use: 'opened' }
    const walk = new Walk(smallDefs([part, tell('last')], [opened])).keys('RO', 'TC-401-1')
    expect(where(walk)).toContain('Sheet 1 of 2, look\nIn: Small job on TC-401-1 > Cylinder opened\n')
  })

  it('counts what a verdict leaves open, three by name', () => {
    expect(where(new Walk().toVerdict())).toMatch(/Open:\n {2}\S/)
  })
})

describe('next', () => {
  it('at a hold point and at a reading gives three steps with hazard and hold point, each marked', () => {
    for (const walk of [new Walk().toGate(), new Walk().toBore()]) {
      const lines = nextLines(walk.engine.defs, walk.state)
      expect(lines[0]).toMatch(/NOT YET TO BE DONE/)
      const ahead = stepsAhead(walk.engine.defs, walk.state)
      expect(ahead).toHaveLength(3)
      for (const { number, step } of ahead) {
        const at = lines.findIndex((line) => line.startsWith(`NOT YET  ${number}  ${step.title}`))
        expect(at).toBeGreaterThan(0)
        if (step.hazard !== undefined) expect(lines[at + 1]).toBe(`  Hazard: ${step.hazard}`)
        if (step.exposes !== undefined) expect(lines.slice(at).join()).toContain('Behind hold point 2')
      }
    }
  })

  it('says of a step that may be left out that it is perhaps not needed, and names a hold point as one', () => {
    expect(coming(new Walk().toBore())).toContain('9  Unswept strip, head end (if it is needed)')
    expect(coming(new Walk().keys('RO', 'TC-401-1'))).toContain('It is a hold point itself.')
  })

  it('has nothing more behind the last step', () => {
    let last = ''
    walkExample((walk) => {
      last = coming(walk)
    })
    expect(last).toBe('No step comes after this one.')
  })
})

describe('both', () => {
  it('go on no record and answer nothing, at every prompt of the walked example', () => {
    const [asked, plain] = [new Walk(), new Walk()]
    asked.stepMs = 0
    plain.stepMs = 0
    for (const walk of [asked, plain]) walk.autoPin = false
    for (const line of exampleAnswers()) {
      for (const word of ['where', 'next', 'Where', 'NEXT ']) if (asked.talk.ask === null) asked.key(word)
      asked.key(line)
      plain.key(line)
      asked.now = plain.now
    }
    expect(asked.entries).toEqual(plain.entries)
    expect(asked.state.closed).not.toBeNull()
    expect(JSON.stringify(asked.entries)).not.toContain('NOT YET TO BE DONE')
  })

  it.each([
    [80, 24],
    [40, 15],
  ])('stand on a sheet of %i columns, %i rows', (columns, rows) => {
    const style = { width: columns - 1, record: 'PRACTICE' as const, ascii: true }
    for (const walk of [
      new Walk(),
      new Walk().toGate(),
      new Walk().toBore(),
      new Walk().toBore().keys('stop'),
    ])
      for (const word of ['where', 'next', 'what is runout', 'what is the moon made of']) {
        const { say } = hear(walk.engine.defs, walk.state, walk.talk, word)
        const lines = layOut(saidBlock(say, false), style)
        expect(say.length).toBeGreaterThan(0)
        for (const line of plainText(lines).split('\n')) expect(line.length).toBeLessThan(columns)
        if (columns === 80) expect([word, lines.length < rows - 2]).toEqual([word, true])
        expect(plainText(lines)).toMatch(/^[\n -~]*$/)
      }
  })
})
