// A report as data: in its published shape, true to the log, and the same for the same log.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { asKind, stepById } from '../../../src/core/job/definitions.ts'
import { placeResult, placesOf } from '../../../src/core/job/places.ts'
import { durationText } from '../../../src/core/report/duration.ts'
import { figureRead } from '../../../src/core/report/parts/figure.ts'
import { pageIn } from '../../../src/core/report/parts/page-in.ts'
import { reportSchema } from '../../../src/core/report/schema.ts'
import { reportSchemaText } from '../../../src/core/report/schema-json.ts'
import { unitNamed } from '../../../src/core/units/index.ts'
import { ROOT, Walk } from '../../helpers/example.ts'
import { exampleWalk, HEAD, reported } from '../../helpers/reported.ts'

const report = reported(exampleWalk())

describe('the shape of a report', () => {
  it('is the published one', () => {
    expect(reportSchema.parse(report)).toEqual(report)
    expect(readFileSync(join(ROOT, 'schemas/report.schema.json'), 'utf8')).toBe(reportSchemaText())
  })

  it('tells of every key what it is', () => {
    const silent: string[] = []
    const walk = (one: unknown, path: string): void => {
      if (typeof one !== 'object' || one === null) return
      const { properties } = one as { properties?: Record<string, { description?: string; const?: unknown }> }
      for (const [key, { description, const: only }] of Object.entries(properties ?? {}))
        if (description === undefined && only === undefined) silent.push(`${path}/${key}`)
      for (const [key, inner] of Object.entries(one)) walk(inner, `${path}/${key}`)
    }
    walk(JSON.parse(reportSchemaText()), '')
    expect(silent).toEqual([])
  })

  it('holds nothing but plain data, and is the same for the same log', () => {
    expect(JSON.parse(JSON.stringify(report))).toEqual(report)
    expect(JSON.stringify(reported(exampleWalk()))).toBe(JSON.stringify(report))
  })
})

describe('a report', () => {
  it('says what sort of record it is, how it ended and what to know before it is used', () => {
    expect(report).toMatchObject({ record: 'EXAMPLE', isClosed: true, outcome: 'MONITOR', head: HEAD })
    const said = report.cautions.join('\n')
    for (const words of [
      'no record of work',
      'file or a pipe',
      'set by hand',
      'invented',
      'Fall-back',
      'manual',
    ])
      expect(said).toContain(words)
  })

  it('of an open job says OPEN, and under STOP that too', () => {
    const open = reported(new Walk().toBore())
    expect(open).toMatchObject({ standing: 'OPEN', isClosed: false, outcome: null })
    expect(open.cautions.join('\n')).toMatch(/^OPEN: /m)
    const stopped = reported(new Walk().toBore().keys('stop'))
    expect(stopped.standing).toBe('OPEN, under STOP')
    expect(stopped.cautions.join('\n')).toContain('UNDER STOP')
  })

  it('has each reading of the log with what was keyed and in SI, and what its place comes to', () => {
    const { entries, state, engine } = exampleWalk()
    const taken = entries.filter((one) => one.type === 'reading.taken')
    const told = report.readings.flatMap(({ places }) => places.flatMap(({ readings }) => readings))
    expect(told.map(({ seq, typed, value }) => [seq, typed, value.si])).toEqual(
      taken.map(({ seq, typed, si }) => [seq, typed, si]),
    )
    expect(told.length).toBe(24)
    for (const { step, places } of report.readings) {
      const read = asKind(stepById(engine.defs, step), 'read')
      for (const [i, place] of placesOf(read).entries())
        expect(places[i]?.value?.si).toBe(placeResult(read, place, state).si)
    }
    const bore = report.readings.find(({ number }) => number === '7')
    expect(bore?.places[3]).toMatchObject({
      number: '7.4',
      spread: '0.0004 in',
      value: { text: '9.5035 in' },
    })
  })

  it('shows figures in units that there are, and as they are in SI', () => {
    const wrong: string[] = []
    // A measuring error is rounded up, all else to the nearest.
    const walk = (one: unknown, isError = false): void => {
      if (typeof one !== 'object' || one === null) return
      if ('si' in one && 'shown' in one && 'unit' in one) {
        const { si, shown, unit } = one as { si: number; shown: string; unit: string }
        const known = unitNamed(unit)
        const back = known === undefined ? Number.NaN : (Number(shown) + (known.offset ?? 0)) * known.factor
        const last = 10 ** -(shown.split('.')[1]?.length ?? 0) * (known?.factor ?? 1)
        const isNear = isError
          ? back - si > -1e-5 * last && back - si < last
          : Math.abs(back - si) <= last * 0.51
        if (!isNear) wrong.push(`${shown} ${unit} is not ${si}`)
      }
      for (const [key, inner] of Object.entries(one)) walk(inner, key === 'U')
    }
    walk(report)
    expect(wrong).toEqual([])
  })

  it('has the evidence of a hold point with its age when it was complete', () => {
    const [gate] = report.gates
    expect(report.gates.length).toBe(1)
    expect(gate).toMatchObject({ number: '2', status: 'complete', failed: [], falls: [] })
    const [opening] = gate?.openings ?? []
    expect(opening?.evidence.length).toBe(17)
    const oxygen = opening?.evidence.find(({ item }) => item === 'oxygen where people breathe')
    expect(oxygen).toMatchObject({ shown: '20.9 %vol', instrument: 'G-7', life: 1800, value: { si: 0.209 } })
    const age = Date.parse(opening?.at ?? '') - Date.parse(oxygen?.at ?? '')
    expect(oxygen?.age).toBe(age / 1000)
    expect(opening?.evidence.at(-1)).toMatchObject({ item: 'witness', person: 'ML' })
  })

  it('tells what a hold point lost and what was no evidence', () => {
    const walk = new Walk().throughGate().wait(40)
    walk.bring({ do: 'tick' })
    const [gate] = reported(walk).gates
    expect(gate).toMatchObject({ status: 'fallen' })
    expect(gate?.falls[0]?.why).toMatch(/past its life/)
    expect(gate?.falls[0]?.void).toContain('oxygen where people breathe')
    // The gas test counts no more, and the record of when it did is not changed by that.
    expect(gate?.openings[0]?.evidence.length).toBe(17)
    const failed = reported(
      new Walk()
        .toGate()
        .keys(
          ...'L-101 L-102 L-103 L-104 L-105 L-106'.split(' '),
          'NO START',
          'NO FLOW',
          'BLOCKED BOTH WAYS',
          'METER ANSWERED',
          '1',
          '18.0',
        ),
    )
    expect(failed.gates[0]?.failed[0]).toMatchObject({
      item: 'oxygen where people breathe',
      shown: '18 %vol',
    })
  })

  it('has every limit with book, source and page, and every signature', () => {
    expect(report.limits.map(({ judged, page, from }) => [judged, page, from])).toEqual([
      ['out of round', 'p. 259', 'fallback'],
      ['taper', 'p. 259', 'fallback'],
      ['spread of all', 'p. 259', 'fallback'],
      ['largest', 'sheet 12', 'machine'],
    ])
    expect(report.signatures.map(({ person, how }) => [person, how])).toEqual([
      ['RO', 'PIN'],
      ['ML', 'PIN'],
      ['KH', 'PIN'],
    ])
    expect(report.decisions).toMatchObject([
      { name: 'NC-1', word: 'MONITOR', choice: 'accept', person: 'KH', open: false },
    ])
  })

  it('has a line for every entry of the log', () => {
    expect(report.log.map(({ seq }) => seq)).toEqual(exampleWalk().entries.map(({ seq }) => seq))
    expect(report.log.every(({ told }) => told.length > 0)).toBe(true)
  })

  it('keeps the old beside the new where a reading was corrected', () => {
    const walk = new Walk().toBore().keys('9.5033')
    const { seq } = walk.last
    walk.key('9.5034')
    expect(walk.bring({ do: 'correct', of: seq, typed: '9.5031', why: 'slip of the finger' })).toBeNull()
    const told = reported(walk)
    expect(told.corrections).toMatchObject([
      {
        was: expect.stringContaining('9.5033 in'),
        now: expect.stringContaining('9.5031 in'),
        why: 'slip of the finger',
      },
    ])
    const all = told.readings.find(({ number }) => number === '7')?.places[0]?.readings ?? []
    expect(all.map(({ typed, counts }) => [typed, counts])).toEqual([
      ['9.5033', 'corrected'],
      ['9.5034', 'yes'],
      ['9.5031', 'yes'],
    ])
  })
})

describe('a time', () => {
  it.each([
    [0, '0 s'],
    [39.2, '40 s'],
    [119.5, '2 min'],
    [130, '3 min'],
    [7201, '2 h 1 min'],
    [28_800, '8 h'],
  ])('is never told shorter than it is: %s', (seconds, told) => {
    expect(durationText(seconds)).toBe(told)
  })
})

describe('the page of a source', () => {
  it.each([
    ['Bloch and Hoefner 1996, p. 259', 'p. 259'],
    ['Bloch and Hoefner 1996, p. 261 and 280-281: three times new', 'p. 261 and 280-281'],
    ['Machine book rev. 4, sheet 12 (invented)', 'sheet 12'],
    ['Bloch and Hoefner 1996, table 4-4 p. 272: a minimum', 'table 4-4'],
    ['a letter of the maker', null],
  ])('%s', (source, page) => {
    expect(pageIn(source)).toBe(page)
  })
})

describe('the finish of a surface', () => {
  it('names itself behind its unit, and is no size', () => {
    const figure = figureRead(exampleWalk().engine.defs, {
      ...{
        step: 'finish',
        place: 'finish.here',
        instrument: 'R-1',
        typed: '0.5',
        value: 0.5,
        unit: 'um',
        si: 5e-7,
      },
    })
    expect(figure).toMatchObject({ kind: 'length', unit: 'um', shown: '0.5', text: '0.5 um Ra' })
  })
})
