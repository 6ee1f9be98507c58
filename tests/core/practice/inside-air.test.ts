// What a cylinder has in it that was swept with inert gas and opened in the same session: next to no air, more of it as time goes by,
// and nothing that a hot-wire meter could see.
import { describe, expect, it } from 'vitest'
import type { Definitions } from '../../../src/core/job/definitions.ts'
import { drawFaults } from '../../../src/core/practice/draw.ts'
import { faultsFor } from '../../../src/core/practice/faults.ts'
import { gradeOf } from '../../../src/core/practice/grade.ts'
import { lessonOn } from '../../../src/core/practice/lesson.ts'
import type { Walk } from '../../helpers/example.ts'
import { careful, defsOf, seedHiding, session, type Trainee } from '../../helpers/trainees.ts'

const SITES = ['tc-401', 'rg-27'] as const
const METERS = { 'tc-401': ['G-7', 'G-9'], 'rg-27': ['B-61', 'B-62'] } as const

/** With nothing wrong. */
function soundSeed(defs: Definitions): number {
  let seed = 1
  while (drawFaults(faultsFor(defs), seed, 1).length > 0) seed++
  return seed
}

/** A machine with nothing wrong, worked by a careful trainee up to a line of a hold point; meters picked by hand from there. */
function upTo(item: string, site: (typeof SITES)[number], meter: string): Walk {
  const defs = defsOf('open-cylinder', site)
  const stops: Trainee = (walk) => {
    const { prompt } = walk
    if (prompt.kind === 'evidence' && prompt.item.key === item) return false
    if (prompt.kind !== 'pick' || prompt.seat.id !== 'meter') return careful(walk)
    walk.key(meter)
    return true
  }
  return session(soundSeed(defs), 1, stops, defs).walk
}

function measured(walk: Walk): number {
  walk.key('measure')
  const { last } = walk
  return last.type === 'practice.asked' ? Number(last.figure) : Number.NaN
}

const lesson = (walk: Walk) => lessonOn(walk.engine.defs, walk.state, walk.last)
const said = (walk: Walk) =>
  walk.entries
    .slice(-4)
    .flatMap((entry) => lessonOn(walk.engine.defs, walk.state, entry)?.says ?? [])
    .join(' ')

describe.each(SITES)('a cylinder of %s that was swept and opened', (site) => {
  const [hotWire, infrared] = METERS[site]

  it('has next to no oxygen in it, and a meter that reads without air passes its hold point', () => {
    const walk = upTo('oxygen_inside', site, infrared)
    const oxygen = measured(walk)
    expect(oxygen).toBeLessThan(3)
    walk.key(String(oxygen))
    if (walk.talk.ask !== null) walk.key('1')
    expect(lesson(walk)?.isUnsafe).toBe(false)
    walk.key(String(measured(walk)))
    expect(walk.last.type).toBe('evidence.given')
  })

  it('is not what a trainee keys who takes it for ordinary air', () => {
    const walk = upTo('oxygen_inside', site, infrared)
    measured(walk)
    walk.key('20.8')
    expect(lesson(walk)).toMatchObject({ isUnsafe: false, isToMend: true })
  })

  it('shows nothing to a hot wire, and the trainee is told to take another meter and not to stop', () => {
    const walk = upTo('oxygen_inside', site, hotWire)
    walk.key(String(measured(walk)))
    if (walk.talk.ask !== null) walk.key('1')
    const burns = measured(walk)
    expect(burns).toBe(0)
    walk.key(String(burns))
    expect(said(walk)).toMatch(/is the wrong meter for gas without air/)
    expect(said(walk)).not.toMatch(/say STOP/)
    const grade = gradeOf(walk.engine.defs, walk.entries)
    expect(grade?.unsafe).toEqual([])
    expect(grade?.scores.find(({ skill }) => skill === 'measuring')).toMatchObject({ right: 0, of: 1 })
  })

  it('takes in air with time, so that a test after a break finds more', () => {
    const early = upTo('oxygen_inside', site, infrared)
    const late = early.copy()
    late.wait(29)
    const [before, after] = [measured(early), measured(late)]
    expect(after - before).toBeGreaterThan(5)
    expect(after).toBeLessThan(12)
  })
})

describe('a cylinder', () => {
  it('with gas left in the nitrogen is found so, and told apart from an aired bore that holds gas', () => {
    const defs = defsOf('open-cylinder')
    const ids = faultsFor(defs).map(({ id }) => id)
    expect(ids).toContain('nitrogen-hides-gas')
    expect(ids).not.toContain('gas-inside')
    const { grade } = session(seedHiding('nitrogen-hides-gas', 4, defs), 4, careful, defs)
    expect(grade).toMatchObject({ isPassed: true, safety: 'passed' })
  })

  it('that nobody swept still has the gas of the line in it', () => {
    const defs = defsOf('vent-and-purge')
    const atVent = (isSwept: boolean) => {
      const stops: Trainee = (walk) =>
        walk.prompt.kind === 'evidence' && walk.prompt.item.key === 'purged' ? false : careful(walk)
      const { walk } = session(soundSeed(defs), 1, stops, defs)
      const { practice } = walk.state
      if (practice === null) throw new Error('no session')
      const confirmed = isSwept ? practice.confirmed : {}
      walk.state = { ...walk.state, practice: { ...practice, confirmed } }
      return measured(walk)
    }
    expect(atVent(true)).toBeLessThan(0.3)
    expect(atVent(false)).toBeGreaterThan(80)
  })

  it('that stands open since before the job has ordinary air in it', () => {
    for (const name of ['bore-inspection', 'rings-in-bore', 'put-back']) {
      const defs = defsOf(name)
      const stops: Trainee = (walk) =>
        walk.prompt.kind === 'evidence' && walk.prompt.item.key === 'oxygen_inside' ? false : careful(walk)
      expect(measured(session(soundSeed(defs), 1, stops, defs).walk), name).toBeGreaterThan(20.5)
    }
  })
})
