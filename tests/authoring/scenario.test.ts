// A practice scenario as a file: what is wrong in it is told at its place, against the machine that would be built of it.
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join, normalize } from 'node:path'
import { describe, expect, it } from 'vitest'
import { sourceLine } from '../../src/authoring/diagnostic.ts'
import type { Disk } from '../../src/authoring/folder.ts'
import { checkTogether } from '../../src/authoring/together.ts'
import { ROOT } from '../helpers/example.ts'

const FOLDER = 'examples/scenarios'
const ONE_END = readFileSync(join(ROOT, FOLDER, 'one-end-wider.yaml'), 'utf8')
const QUIET = readFileSync(join(ROOT, FOLDER, 'quiet-meter.yaml'), 'utf8')

const SHIPPED = { procedure: 'procedures/NAME.yaml', machine: 'examples/NAME/machine.yaml' }

/** Code and marked words of each problem; `files` stand in the place of those on disk. */
function check(text: string, files: Readonly<Record<string, string>> = {}) {
  const given = { path: `${FOLDER}/mine.yaml`, text }
  const isThere = (path: string) => path in files || existsSync(join(ROOT, path))
  const read = (path: string) => files[path] ?? readFileSync(join(ROOT, path), 'utf8')
  const disk: Disk = {
    read: (path) => (isThere(path) ? read(path) : undefined),
    resolve: (from, name) => normalize(join(from, '..', name)),
    beside: (path) =>
      readdirSync(join(ROOT, path, '..'))
        .filter((name) => name.endsWith('.yaml'))
        .map((name) => join(path, '..', name)),
    shipped: (kind, name) => {
      const path = SHIPPED[kind].replace('NAME', name)
      return isThere(path) ? path : undefined
    },
  }
  const result = checkTogether([given], disk)
  const said = result.diagnostics.map(({ code, file, line, column, endColumn }) => {
    const marked = sourceLine(file === given.path ? text : read(file), line).slice(column - 1, endColumn - 1)
    return `${code}: ${marked}`
  })
  return { ...result, said }
}

function changed(text: string, from: string, to: string): string {
  if (!text.includes(from)) throw new Error(`the scenario holds no ${from}`)
  return text.replace(from, to)
}

const ROWS: readonly (readonly [
  what: string,
  text: string,
  from: string,
  to: string,
  said: readonly string[],
])[] = [
  ['a fault that is none', ONE_END, '[taper, rust]', '[tapered, rust]', ['unknown-fault: tapered']],
  ['one of another procedure', ONE_END, '[taper, rust]', '[taper, rod-bent]', ['not-met: rod-bent']],
  ['two of one sort', ONE_END, '[taper, rust]', '[taper, barrel]', ['not-together: barrel']],
  ['one that ends the work', ONE_END, '[taper, rust]', '[taper, meter-dead]', ['not-together: meter-dead']],
  [
    'one that hides the other',
    ONE_END,
    '[taper, rust]',
    '[rust, gauge-loose]',
    ['not-together: gauge-loose'],
  ],
  ['one twice', ONE_END, '[taper, rust]', '[taper, taper]', ['repeated: taper']],
  ['a finding that is not there', ONE_END, 'is: [rust]', 'is: [leak]', ['not-shown: leak']],
  ['a finding of no list', ONE_END, 'is: [rust]', 'is: [moss]', ['unknown-condition: moss']],
  ['another verdict', ONE_END, 'is: REWORK', 'is: MONITOR', ['not-shown: MONITOR']],
  ['another limit', ONE_END, 'governs: taper', 'governs: spread', ['not-shown: spread']],
  [
    'a verdict at no judge step',
    ONE_END,
    'step: bore_judged',
    'step: surface',
    ['unknown-judge-step: surface'],
  ],
  [
    'a hint for no place',
    ONE_END,
    'at: hold_point/block',
    'at: hold_point/blok',
    ['unknown-place: hold_point/blok'],
  ],
  [
    'a stop where none is',
    ONE_END,
    'expect:\n',
    'expect:\n  stops_at: hold_point/block\n',
    ['not-shown: hold_point/block'],
  ],
  [
    'a stop at another place',
    QUIET,
    'stops_at: hold_point/flammable_inside',
    'stops_at: hold_point/bump',
    ['not-shown: hold_point/bump'],
  ],
  [
    'a verdict behind a stop',
    QUIET,
    'stops_at: hold_point/flammable_inside',
    'verdicts: [{ step: bore_judged, is: ACCEPT }]',
    ['not-reached: step'],
  ],
  ['level and faults', ONE_END, 'faults:', 'level: 2\nfaults:', ['level-and-faults: level']],
  ['neither', ONE_END, 'faults: [taper, rust]\n', '', ['nothing-chosen: scenario']],
  [
    'a procedure that is not there',
    ONE_END,
    'procedure: bore-inspection',
    'procedure: bore-x',
    ['missing-file: bore-x'],
  ],
  [
    'a machine that is a crew',
    ONE_END,
    'machine: tc-401',
    'machine: ../tc-401/crew.yaml',
    ['other-kind: ../tc-401/crew.yaml'],
  ],
  ['what is not marked as made up', ONE_END, 'invented: true\n', '', ['missing-key: scenario']],
  [
    'a kind of record',
    ONE_END,
    'invented: true\n',
    'invented: true\nrecord: REAL\n',
    ['unknown-key: record'],
  ],
  ['a limit of its own', ONE_END, 'seed: 2041', 'seed: 2041\nlimits: []', ['unknown-key: limits']],
]

describe('a scenario', () => {
  it('holds as it is shipped, and makes no job that would be searched', () => {
    for (const text of [ONE_END, QUIET]) {
      const { diagnostics, jobs, sound } = check(text)
      expect([diagnostics, jobs, sound]).toEqual([[], [], []])
    }
  })

  it.each(ROWS)('is told of %s at its place', (_what, text, from, to, said) => {
    expect(check(changed(text, from, to)).said).toEqual(said)
  })

  it('draws by level and seed, and is held against what was drawn', () => {
    const drawn = changed(ONE_END, 'faults: [taper, rust]', 'level: 1')
    expect(check(drawn).said).toContain('not-shown: rust')
    expect(check(changed(drawn, /expect:[\s\S]*?(?=invented)/.exec(drawn)?.[0] ?? '', '')).said).toEqual([])
  })

  it('names nobody of a crew file that is not invented', () => {
    const crew = 'examples/tc-401/crew.yaml'
    // Without its comments: figures in them are told of by themselves.
    const own = changed(readFileSync(join(ROOT, crew), 'utf8'), 'invented: true', '').replace(/^#.*$/gm, '')
    const text = changed(ONE_END, 'Night shift has written', 'Oduya has written')
    expect(check(text).said).toEqual([])
    expect(check(text, { [crew]: own }).said.map((one) => one.split(':')[0])).toEqual(['real-name'])
    expect(check(ONE_END, { [crew]: own }).said).toEqual([])
  })
})
