// The briefing: every step in order, each line marked, nothing left out that decides, names to sign at the end.
import { describe, expect, it } from 'vitest'
import type { Definitions } from '../../../src/core/job/definitions.ts'
import { kitOf } from '../../../src/core/kit/kit.ts'
import { layOut, plainText, type SheetStyle } from '../../../src/core/sheet/block.ts'
import { briefingBlocks } from '../../../src/core/sheet/briefing.ts'
import { exampleDefs } from '../../helpers/example.ts'
import { rawProcedure, smallDefs, TWO_GATES, tell } from '../../helpers/small-job.ts'

function paper(defs: Definitions, width = 79, ascii = false): string[] {
  const style: SheetStyle = { width, record: 'NOT LIVE', ascii }
  const blocks = briefingBlocks(defs, kitOf(defs, '2026-03-14'), style)
  return blocks
    .map((block) => plainText(layOut(block, style)))
    .join('\n')
    .split('\n')
}

/** The words without the margin, lines put together again. */
const flat = (lines: readonly string[]) => lines.map((line) => line.slice(17).trim()).join(' ')

describe('the briefing', () => {
  it.each([40, 59, 79, 120])('marks every line NOT LIVE and keeps within %i columns', (width) => {
    for (const line of paper(exampleDefs(), width)) {
      expect(line).toMatch(/^NOT LIVE/)
      expect(line.length).toBeLessThanOrEqual(width)
    }
  })

  it('walks all steps in order, by number and title', () => {
    const defs = exampleDefs()
    const numbers = paper(defs).flatMap((line) => /^NOT LIVE +(\d+) │/.exec(line)?.[1] ?? [])
    expect(numbers).toEqual(defs.steps.map((step) => String(step.number)))
    const text = flat(paper(defs))
    for (const { step } of defs.steps) expect(text).toContain(step.title)
  })

  it('says hazards, trouble, hold points with their evidence, and which hold point a step stands behind', () => {
    const text = flat(paper(smallDefs(TWO_GATES)))
    expect(text).toContain('HOLD POINT. It keeps people from: the driver being started')
    expect(text).toContain(
      '- 2 locks by number, at: main driver breaker, E-1; barring motor breaker, E-2. Lock.',
    )
    expect(text).toContain('- Gas, oxygen where people breathe: 19.5 %vol to 23.5 %vol')
    expect(text).toContain('Witness, a mechanic or lead who did none of it.')
    expect(text).toContain('Exposes people to: the driver being started; gas. Behind hold points 2 and 3.')
    expect(text).toContain('Put in, and out again before the job ends: locking pin')
    const bare = smallDefs([tell('a', { exposes: ['fall'], hazard: 'It falls.', trouble: 'Stand back.' })])
    expect(flat(paper(bare))).toContain('the head falling. NO HOLD POINT holds it.')
    expect(flat(paper(bare))).toContain('Hazard: It falls. If it goes wrong: Stand back.')
  })

  it('says in its head who is needed besides the one who keys', () => {
    const defs = exampleDefs()
    const sheet = defs.steps.find(({ step }) => step.kind === 'decide')?.number
    const needed = `Needed besides who keys: a witness who stands there, at hold point 2; a lead who decides, at sheet ${sheet}.`
    const text = flat(paper(defs))
    expect(text).toContain(needed)
    expect(text.indexOf(needed)).toBeLessThan(text.indexOf('What can hurt'))
    expect(flat(paper(smallDefs([tell('a')])))).not.toContain('Needed besides')
  })

  it('says conditions in words, points, needs and what is let in', () => {
    const part = rawProcedure([tell('x')], { procedure: 'inner' })
    const look = TWO_GATES.find((step) => step.id === 'look') ?? {}
    const text = flat(
      paper(
        smallDefs(
          [
            { ...look, exposes: [] },
            tell('b', {
              when: { rule: 'look == "sound"', unknown: 'hold' },
              point: { kind: 'witness', roles: ['lead'], notice: '2 h' },
              needs: [{ what: 'Drift', kind: 'tool', note: 'brass' }],
              lets_in: ['bad_air'],
            }),
            {
              id: 'p',
              kind: 'part',
              title: 'Inner work',
              use: 'inner',
              when: { rule: 'look == "scored"', unknown: 'skip' },
            },
          ],
          [part],
        ),
      ),
    )
    expect(text).toContain('Only if step 1, look, finds "Sound". While that is unknown the job waits here.')
    expect(text).toContain(
      'All of Inner work: only if step 1, look, finds "Scored". While that is unknown it is left out.',
    )
    expect(text).not.toMatch(/==|!=|&&|\|\|/)
    expect(text).toContain('Part: Inner work')
    expect(text).toContain(
      'Inspection point: witness: signed by a lead who did not do the step after a notice of 2 h',
    )
    expect(text).toContain('Have there: Drift (brass)')
    expect(text).toContain('Lets in: gas.')
  })

  it('ends with a line to sign and to date for each of the crew', () => {
    const lines = paper(exampleDefs())
    for (const { id, name, role } of exampleDefs().crew.crew) {
      const at = lines.findIndex((line) => line.endsWith(`│ ${id}  ${name}, ${role}`))
      expect(at).toBeGreaterThan(lines.length - 25)
      expect(lines[at + 1]).toMatch(/│ {3}signed _{20,} {2}date _{10,}$/)
    }
  })

  it('tells whom to call and how to make it safe before the first step', () => {
    const text = flat(paper(exampleDefs()))
    const first = text.indexOf(exampleDefs().steps[0]?.step.title ?? '?')
    for (const words of [
      'Call: Radio channel 1',
      'Make safe:',
      'Rescue plan',
      'Kit: 3 instruments',
      'Who does what',
    ])
      expect(text.indexOf(words)).toBeGreaterThanOrEqual(0)
    for (const words of ['Call: ', 'Make safe:', 'Who does what'])
      expect(text.indexOf(words)).toBeLessThan(first)
  })

  it('uses ASCII only where asked', () => {
    expect(paper(exampleDefs(), 79, true).join('')).toMatch(/^[ -~]*$/)
  })
})
