// The report of a practice session has its sheet, in every form, and PRACTICE stands on every line of it.
import { parse } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'
import { paperOf } from '../../../src/core/report/paper-of.ts'
import type { Report } from '../../../src/core/report/schema.ts'
import { reportSchema } from '../../../src/core/report/schema.ts'
import { reportCsv } from '../../../src/core/report/write/csv.ts'
import { reportText } from '../../../src/core/report/write/text.ts'
import { exampleWalk, reported } from '../../helpers/reported.ts'
import { careful, careless, practiceDefs, seedHiding, session, type Trainee } from '../../helpers/trainees.ts'

const LEVEL = 1
const seed = seedHiding('barrel', LEVEL, practiceDefs())

const reportBy = (trainee: Trainee): Report => reported(session(seed, LEVEL, trainee).walk)

const text = (report: Report) => reportText(paperOf(report))
const rows = (report: Report): Record<string, string>[] =>
  parse(reportCsv(report), { columns: true, bom: true })

describe('the report of a practice session', () => {
  it('has safety apart, the score by skill, what was hidden, what is next and the seed', () => {
    const report = reportBy(careful)
    expect(reportSchema.parse(report)).toEqual(report)
    expect(report.practice).toMatchObject({
      who: 'RO',
      seed,
      level: LEVEL,
      isSameMachine: true,
      safety: 'passed',
      isOver: true,
      isPassed: true,
      hidden: [{ name: expect.stringContaining('barrel'), isNamed: true }],
    })
    const said = text(report).replace(/\s*\n\S*\s*/g, ' ')
    for (const part of [
      '( PASSED )',
      'Safety, apart from all else: PASSED',
      'Hidden: The bore is wider',
      `--seed ${seed}`,
    ])
      expect(said).toContain(part)
  })

  it('says by which entry safety failed, and what was not named', () => {
    const { practice } = reported(session(seedHiding('gas-inside', 2), 2, careless).walk)
    expect(practice).toMatchObject({ safety: 'failed', isPassed: false, hidden: [{ isNamed: false }] })
    expect(practice?.unsafe.length).toBeGreaterThan(0)
  })

  it('bears PRACTICE on every line of text and every row of the table', () => {
    const report = reportBy(careful)
    for (const line of text(report).trimEnd().split('\n')) expect(line).toMatch(/^PRACTICE/)
    const all = rows(report)
    expect(new Set(all.map(({ record }) => record))).toEqual(new Set(['PRACTICE']))
    const own = all.filter(({ what }) => what === 'session')
    expect(own.map(({ name, remark }) => `${name}: ${remark}`)).toContain(
      'safety, apart from all else: passed',
    )
    expect(paperOf(report).record).toBe('PRACTICE')
  })

  it('gives nothing away while the session can be taken up again', () => {
    const { walk } = session(seed, LEVEL, (one) => one.prompt.kind !== 'read' && careful(one))
    const report = reported(walk)
    expect(report.practice).toMatchObject({ isOver: false, hidden: [], expected: [] })
    expect(JSON.stringify(report)).not.toContain('barrel')
    expect(text(report)).not.toContain('barrel')
  })

  it('is of no other record', () => {
    expect(reported(exampleWalk()).practice).toBeUndefined()
    expect(text(reported(exampleWalk()))).not.toContain('practice session')
  })
})
