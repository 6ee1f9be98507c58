// What was changed, taken back, attached or found out later on a job, as its report tells it.
import { describe, expect, it } from 'vitest'
import { paperOf } from '../../../src/core/report/paper-of.ts'
import { reportText } from '../../../src/core/report/write/text.ts'
import { Walk } from '../../helpers/example.ts'
import { exampleWalk, expectReported, reported } from '../../helpers/reported.ts'
import { changed, takenIn } from '../../helpers/taken-in.ts'

describe('a report', () => {
  it('of a finished job holds together', () => {
    expectReported(exampleWalk())
  })

  it('tells a changed machine record, field by field, and judges by the new one', () => {
    const walk = new Walk().toVerdict()
    const after = takenIn(walk, changed(walk, { edition: '5' }))
    const report = reported(after)
    expect(report.machine.edition).toBe('5')
    const [told] = report.corrections
    expect(told).toMatchObject({ what: 'Machine record changed, by KH', why: 'bored to the next size' })
    expect([told?.was, told?.now]).toEqual([
      expect.stringMatching(/edition: .*4/),
      expect.stringMatching(/edition: .*5/),
    ])
    // The verdict fell with it: none stands, and its limits with none.
    expect(report.verdicts).toEqual([])
    expect(report.limits).toEqual([])
  })

  it('says that an instrument was found out of calibration, and that what it read is void', () => {
    const walk = new Walk().toVerdict()
    expect(
      walk.bring({ do: 'doubt-instrument', instrument: 'M-3', why: 'dropped since', says: 'the laboratory' }),
    ).toBeNull()
    const report = reported(walk)
    expect(report.instruments.find(({ id }) => id === 'M-3')).toMatchObject({
      doubted: 'dropped since; says the laboratory',
      readings: 0,
    })
    const bore = report.readings.find(({ number }) => number === '7')
    const all = bore?.places.flatMap(({ readings }) => readings) ?? []
    expect(all.length).toBeGreaterThan(11)
    expect(new Set(all.map(({ counts }) => counts))).toEqual(new Set(['void']))
    expect(bore?.places.map(({ value }) => value)).toEqual(Array(6).fill(null))
    expect(report.plots).toEqual([])
    // A verdict that fell is not as if it had never been.
    expect(report.verdicts).toEqual([])
    expect(report.fallen).toMatchObject([{ was: 'MONITOR', by: 'M-3' }])
    const text = reportText(paperOf(report))
    expect(text).toMatch(/18 │ \( VOID \) {2}Bore judged: was MONITOR, fell with M-3/)
    expect(text).not.toContain('Nothing in it is judged')
  })

  it('states the measuring error that the verdict used at its own places, rounded up', () => {
    const walk = new Walk().toVerdict()
    const record =
      walk.state.verdicts[walk.engine.defs.steps.find(({ step }) => step.kind === 'judge')?.id ?? '']
    if (record?.verdict.compute !== 'bore_form') throw new Error('no bore')
    const { judged } = record.verdict.result
    const { limits } = reported(walk)
    expect(limits.map(({ U }) => U?.si)).toEqual(judged.map(({ judgement }) => judgement.guard))
    for (const { U } of limits) expect(Number(U?.shown)).toBeGreaterThanOrEqual((U?.si ?? 1) / 0.0254 - 1e-9)
  })

  it('tells evidence that was taken back, with what had been shown', () => {
    const walk = new Walk().throughGate()
    const gate = walk.engine.defs.steps.find(({ step }) => step.kind === 'gate')?.id ?? ''
    const item = Object.keys(walk.state.gates[gate]?.given ?? {})[0] ?? ''
    expect(
      walk.bring({ do: 'take-back-evidence', step: gate, item, why: 'read off another lock' }),
    ).toBeNull()
    const [told] = reported(walk).corrections
    expect(told?.what).toMatch(/^2 Hold point.*: taken back, lock at main driver breaker/)
    expect(told?.was).toContain('L-101')
    expect(told?.why).toContain('read off another lock')
  })

  it('has attached files with their hash, and how they lie there now', () => {
    const walk = new Walk().toBore()
    const sha256 = 'cd'.repeat(32)
    const { seq } = walk.last
    expect(
      walk.bring({
        do: 'attach',
        name: 'wall.jpg',
        given: 'wall.jpg',
        size: 2100,
        sha256,
        caption: 'the score',
      }),
    ).toBeNull()
    const told = reported(walk, {}, new Map([[seq + 1, 'changed']]))
    expect(told.files).toEqual([
      { seq: seq + 1, name: 'wall.jpg', caption: 'the score', size: 2100, sha256, is: 'changed' },
    ])
  })
})
