// What differs between two machine records, in the words of the trade; and which definitions count at which entry.
import { describe, expect, it } from 'vitest'
import { asOpened, bundlesOf, defsAt, defsNow } from '../../../src/core/job/editions.ts'
import type { Entry } from '../../../src/core/job/entries.ts'
import { recordChanges } from '../../../src/core/job/record-changes.ts'
import { changedText } from '../../../src/core/job/record-words.ts'
import { exampleDefs, Walk } from '../../helpers/example.ts'
import { changed, takenIn } from '../../helpers/taken-in.ts'

const was = exampleDefs().machine
const with_ = (from: string | RegExp, to: string) => {
  const record = (text: string) => {
    const next = text.replace(from, to)
    if (next === text) throw new Error(`the record does not say ${from}`)
    return next
  }
  return recordChanges(was, exampleDefs({ machine: record }).machine).map(changedText)
}

describe('the fields of a record that differ', () => {
  it.each([
    ['9.750 in', '9.760 in', ['bore, counterbore: 9.750 in, now 9.760 in']],
    [
      '      - id: flammable_spark\n',
      '      - id: flammable_drill\n',
      /^site, gas, limit flammable spark, id: flammable_spark, now not there/,
    ],
    [
      '  source: Machine book rev. 4, sheet 21 (invented)\ndriver',
      '  turns: 8\n  source: Machine book rev. 4, sheet 21 (invented)\ndriver',
      ['pocket, turns: not there before, now 8'],
    ],
    ['at_most: 9.530 in', 'at_most: 9.540 in', ['limit largest, at most: 9.530 in, now 9.540 in']],
    [
      'at_least: 0.270 in',
      'at_least: 0.280 in',
      ['limit ring radial thickness (least), at least: 0.270 in, now 0.280 in'],
    ],
    [
      '"suction block valve, V-11"',
      '"suction block valve, V-21"',
      ['site, isolation point suction, name: suction block valve, V-11, now suction block valve, V-21'],
    ],
    ['lubricated: true', 'lubricated: true # as before', []],
    ['9.750 in', '9.7500 in', ['bore, counterbore: 9.750 in, now 9.7500 in']],
    [
      '    renewed: [rings, rod]\n',
      '    renewed: [rings]\n',
      ['overhaul 2019-05-14, renewed: rings; rod, now rings'],
    ],
    [
      'value: 9.5039 in',
      'value: 9.5040 in',
      ['overhaul 2021-08-03, as left, bore diameter centre vertical, value: 9.5039 in, now 9.5040 in'],
    ],
    [
      '          bore: 6.250 in',
      '          bore: 6.300 in',
      ['whole compressor, stage 2, throw 2, bore: 6.250 in, now 6.300 in'],
    ],
  ] as const)('%s, made %s', (from, to, told) => {
    const found = with_(from, to)
    if (told instanceof RegExp) expect(found.join('\n')).toMatch(told)
    else expect(found).toEqual(told)
  })

  it('are no more by another order of a list, and all of one that is taken out or put in', () => {
    const points = was.site.isolation_points
    const turned = { ...was, site: { ...was.site, isolation_points: [...points].reverse() } }
    expect(recordChanges(was, turned)).toEqual([])
    const fewer = { ...was, site: { ...was.site, isolation_points: points.slice(1) } }
    expect(recordChanges(was, fewer)).toEqual([
      { field: 'site, isolation point breaker, id', was: 'breaker', now: null },
      {
        field: 'site, isolation point breaker, name',
        was: 'main driver breaker, E-1',
        now: null,
      },
      { field: 'site, isolation point breaker, comes off', was: 'before_start', now: null },
    ])
    expect(recordChanges(fewer, was).map(({ now }) => now)).toEqual([
      'breaker',
      'main driver breaker, E-1',
      'before_start',
    ])
    const { piston: _piston, ...bare } = was
    expect(recordChanges(bare, was).map(({ field }) => field)).toContain('piston, length')
  })
})

describe('the definitions of a log', () => {
  const walk = new Walk().toBore()
  walk.bring({ do: 'leave' })
  const once = takenIn(walk, changed(walk, { edition: '5' }))
  const twice = takenIn(once, changed(once, { edition: '6' }), { person: 'PB' })
  const seqs = twice.entries.flatMap((e) => (e.type === 'record.taken-in' ? [e.seq] : []))

  it('are those of the opening up to the entry that takes a record in, and its own from there', () => {
    const [first, second] = seqs as [number, number]
    const editions = [
      ...asOpened(walk.engine.defs),
      { from: first, defs: once.engine.defs },
      { from: second, defs: twice.engine.defs },
    ] as const
    const at = (seq: number) => defsAt(editions, seq).machine.edition
    expect([0, first - 1, first, second - 1, second, second + 9].map(at)).toEqual([
      '4',
      '4',
      '5',
      '5',
      '6',
      '6',
    ])
    expect(defsNow(editions).machine.edition).toBe('6')
    expect(defsNow(asOpened(walk.engine.defs))).toBe(walk.engine.defs)
  })

  it('come of the files of the opening with each record put in the place of the one before', () => {
    const entries = twice.entries.map(
      (e): Entry => (e.type === 'record.taken-in' ? { ...e, file: { ...e.file, text: `of ${e.seq}` } } : e),
    )
    const bundles = bundlesOf(entries)
    expect(bundles.map(({ from }) => from)).toEqual([0, ...seqs])
    const others = (files: (typeof bundles)[number]['files']) =>
      files.filter(({ role }) => role !== 'machine')
    for (const { from, files } of bundles) {
      expect(others(files)).toEqual(others(bundles[0].files))
      const own = files.filter(({ role }) => role === 'machine').map(({ text }) => text)
      expect(own).toEqual([from === 0 ? expect.stringContaining('TC-401-1') : `of ${from}`])
    }
  })
})
