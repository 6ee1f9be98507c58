// What the files of a job say of each other that is no error and must not pass in silence: gas that no gate tests,
// repeats that no instrument can tell apart. On the good files with one thing changed, as pointed at.
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { checkJob, type JobFiles, type TextFile } from '../../src/authoring/check.ts'
import { sourceLine } from '../../src/authoring/diagnostic.ts'

type Name = 'procedure' | 'part' | 'machine' | 'instruments' | 'crew' | 'limit-book'
type Changes = Readonly<Partial<Record<Name, (text: string) => string>>>

function file(name: Name, changes: Changes): TextFile {
  const text = readFileSync(new URL(`../fixtures/files/good-${name}.yaml`, import.meta.url), 'utf8')
  return { path: name, text: changes[name]?.(text) ?? text }
}

function put(from: string, to: string) {
  return (text: string) => {
    if (!text.includes(from)) throw new Error(`the file holds no ${from}`)
    return text.replace(from, to)
  }
}

/** `file:line:column code | marked text | hint`, errors with a word in front. */
function told(changes: Changes): string[] {
  const files: JobFiles = {
    procedure: file('procedure', changes),
    parts: [file('part', changes)],
    machine: file('machine', changes),
    instruments: file('instruments', changes),
    crew: file('crew', changes),
    limitBooks: [file('limit-book', changes)],
  }
  const all = [files.procedure, ...files.parts, files.machine, files.instruments, files.crew]
  const result = checkJob(files)
  return (result.ok ? result.warnings : result.diagnostics).map((one) => {
    const line = sourceLine(all.find(({ path }) => path === one.file)?.text ?? '', one.line)
    const mark = line.slice(one.column - 1, one.endColumn - 1)
    const word = one.severity === 'error' ? 'ERROR ' : ''
    return `${word}${one.file}:${one.line}:${one.column} ${one.code} | ${mark} | ${one.hint}`
  })
}

const limit = (id: string, gas: string, place: string, bound: string) =>
  `      - id: ${id}\n        gas: ${gas}\n        place: ${place}\n        purpose: a test\n        ${bound}\n` +
  '        source: Site rule (invented)\n        approved_by: site lead (invented)\n        since: 2026-01-01\n'
const moreLimits = (...limits: string[]) => put('bore:\n', `${limits.join('')}bore:\n`)
const INSIDE = limit('flammable_inside', 'flammable', 'in_the_opening', 'at_most: 10 %LEL')
const H2S = limit('h2s_air', 'hydrogen_sulfide', 'breathing_zone', 'at_most: 5 ppm')
const SPARK = limit('flammable_spark', 'flammable', 'breathing_zone', 'at_most: 1 %LEL')

/** A second gate behind the first, which tests oxygen and what can burn inside the opening. */
const gate = (name: string) =>
  `  - id: ${name}\n    kind: gate\n    title: At the opening\n    holds: [bad_air]\n    hazard: Gas.\n` +
  '    trouble: Come out.\n    clear_words: ALL OUT\n    evidence:\n' +
  '      - { id: o2, kind: gas, ask: Read., limit: oxygen_inside, with: meter }\n' +
  '      - { id: lel, kind: gas, ask: Read., limit: flammable_inside, with: meter, oxygen: o2 }\n' +
  '      - { id: seen, kind: witness, ask: Look., roles: [lead] }\n'
const OXYGEN_INSIDE = limit('oxygen_inside', 'oxygen', 'in_the_opening', 'at_most: 23.5 %vol')

describe('files that would let one look like two, or air that burns like air', () => {
  it('are refused where two people of the crew have one name', () => {
    expect(told({ crew: put('name: T. Sato', 'name: a berg') })).toEqual([
      'ERROR crew:5:21 same-name | a berg | one person stands here once; two of one name are told apart, as A. Berg sen. and A. Berg jun.',
    ])
  })

  it.each(['100 %LEL', '250 %LEL'])('are refused where a limit lets people go at %s', (bound) => {
    expect(told({ machine: put('at_most: 10 %LEL', `at_most: ${bound}`) })).toEqual([
      `ERROR machine:48:18 burns | ${bound} | 100 %LEL is where it burns; write the limit of the site`,
    ])
  })
})

describe('gas limits of the machine that the gates leave untested', () => {
  const machine = moreLimits(INSIDE, OXYGEN_INSIDE)
  const noInside =
    'procedure:21:9 untested-limit | hold_point | add a gas test against flammable_inside and oxygen_inside'

  it('are none in the good files', () => {
    expect(told({})).toEqual([])
  })

  it('are named when they are of another gas at a place it tests', () => {
    expect(told({ machine: moreLimits(H2S) })).toEqual([
      'procedure:21:9 untested-limit | hold_point | add a gas test against h2s_air',
    ])
  })

  it('are named when somebody measures in the bore and no gate before tests the air inside', () => {
    expect(told({ machine })).toEqual([noInside])
    const behind = put('  - id: form\n', `${gate('opening')}  - id: form\n`)
    // Either gate stands behind a step that faces what it holds, which is a finding of its own.
    const warned = (procedure: (text: string) => string) =>
      told({ machine, procedure }).filter((one) => !one.includes(' late-gate | bad_air'))
    expect(warned(behind)).toEqual([noInside])
    const before = put('  - id: diameters\n', `${gate('opening')}  - id: diameters\n`)
    expect(warned(before)).toEqual([])
  })

  it('are not asked for where nobody is exposed in measuring', () => {
    const out = (text: string) =>
      text.replace(/ {4}(?:exposes|hazard|trouble): (?:\[rot|Arm|Come out and).*\n(?! {4}clear)/g, '')
    expect(told({ machine, procedure: out }).filter((one) => one.includes('untested'))).toEqual([])
  })

  it('are named when the air inside is tested and the air people breathe nowhere', () => {
    const only = (text: string) => {
      const bare = text.replace(/ {6}- \{ id: (?:oxygen|burns),.*\n/g, '')
      return bare.replace('  - id: diameters\n', `${gate('opening')}  - id: diameters\n`)
    }
    const [line = ''] = told({ machine, procedure: only })
    expect(line).toMatch(/untested-limit \| opening \| add a gas test against oxygen_air and flammable_air$/)
  })

  it('are read in vain before a wait that is as long as they live: that gate would never open', () => {
    const wait = (lasts: string) =>
      put(
        '      - { id: witness,',
        `      - { id: still, kind: wait, ask: Watch it., lasts: ${lasts}, begin_words: SHUT IN, words: NO RISE, against: [rotation] }\n      - { id: witness,`,
      )
    expect(told({ procedure: wait('30 min') })).toEqual([
      'ERROR procedure:32:57 never-over | 30 min | put the wait before oxygen, or make it shorter',
    ])
    expect(told({ procedure: wait('29 min') })).toEqual([])
  })

  it('are not asked for twice: of several purposes at one place one limit is chosen', () => {
    expect(told({ machine: moreLimits(SPARK) })).toEqual([])
  })

  it('are not asked for at a vent, where nobody is', () => {
    const vent = limit('oxygen_vent', 'oxygen', 'at_the_vent', 'at_most: 5 %vol')
    expect(told({ machine: moreLimits(vent) })).toEqual([])
  })

  it('count as tested in a part, unless the part may be skipped', () => {
    const part =
      '  - id: turning\n    kind: part\n    title: Turn it\n    use: turn_by_hand\n    when: { rule: strip == "present", unknown: skip }\n'
    const changes = (step: string): Changes => ({
      machine,
      procedure: put('  - id: set_before\n', `${step}  - id: set_before\n`),
      part: (text) =>
        text
          .replace('hazards: [', 'hazards: [{ id: bad_air, name: gas that burns }, ')
          .replace('seats: []\n', 'seats:\n  - { id: meter, kinds: [gas_meter], for: the gas test }\n')
          .replace('steps:\n', `steps:\n${gate('opening')}`),
    })
    expect(told(changes(part))).toEqual([noInside])
    expect(told(changes(part.replace(/ {4}when.*\n/, '')))).toEqual([])
  })

  it('are named at the gate in the part when no other stands before', () => {
    const part =
      '  - id: turning\n    kind: part\n    title: Turn it\n    use: turn_by_hand\n    when: { rule: strip == "present", unknown: skip }\n'
    const found = told({
      machine,
      procedure: (text) =>
        text
          .replace(/ {6}- \{ id: (?:oxygen|burns),.*\n/g, '')
          .replace('  - id: set_before\n', `${part}  - id: set_before\n`),
      part: (text) =>
        text
          .replace('hazards: [', 'hazards: [{ id: bad_air, name: gas that burns }, ')
          .replace('seats: []\n', 'seats:\n  - { id: meter, kinds: [gas_meter], for: the gas test }\n')
          .replace('steps:\n', `steps:\n${gate('opening')}`),
    })
    expect(found).toEqual([
      'part:17:9 untested-limit | opening | add a gas test against oxygen_air and flammable_air',
      'part:17:9 untested-limit | opening | add a gas test against flammable_inside and oxygen_inside',
    ])
  })

  it('are not asked of a gate that tests no gas, nor guessed while a limit is misspelled', () => {
    const bare = (text: string) => text.replace(/ {6}- \{ id: (?:oxygen|burns),.*\n/g, '')
    expect(told({ machine: moreLimits(H2S), procedure: bare })).toEqual([])
    const misspelled = put('limit: oxygen_air', 'limit: oxigen_air')
    expect(told({ machine: moreLimits(H2S), procedure: misspelled })).toHaveLength(1)
  })
})

describe('repeats closer than any instrument shows', () => {
  it('are told with the smallest step there is', () => {
    expect(
      told({ procedure: put('at_most: 4, within: 0.0005 in', 'at_most: 4, within: 0.00005 in') }),
    ).toEqual([
      'procedure:80:49 below-resolution | 0.00005 in | allow at least 0.0001 in; steps in the register: M-1 0.0001 in',
    ])
    expect(told({ procedure: put('within: 1 delta-degF', 'within: 0.05 delta-degF') })).toEqual([
      'procedure:60:49 below-resolution | 0.05 delta-degF | allow at least 0.1 delta-degF; steps in the register: T-1 0.1 delta-degF',
    ])
  })

  it('are not told where one step is just enough, in whatever unit', () => {
    expect(
      told({ procedure: put('at_most: 4, within: 0.0005 in', 'at_most: 4, within: 0.0001 in') }),
    ).toEqual([])
    // The same length, and the last place of a double above it.
    const found = told({
      procedure: put('at_most: 4, within: 0.0005 in', 'at_most: 4, within: 0.09398 mm'),
      instruments: put('resolution: 0.0001 in', 'resolution: 0.0037 in'),
    })
    expect(found.some((one) => one.startsWith('procedure:49:49 below-resolution'))).toBe(true)
    expect(found.filter((one) => one.startsWith('procedure:80:'))).toEqual([])
  })

  it('look only at instruments that the crew could pick: one that does not span the bore is none', () => {
    const instruments = (text: string) => {
      const [head = '', rest = ''] = text.split('  - id: T-1')
      const own = head.slice(head.indexOf('  - id: M-1'))
      const coarse = own.replace('0.0001 in', '0.001 in').replace('expanded: 0.0003', 'expanded: 0.003')
      const fine = own.replace('M-1', 'M-2').replace('to: 10 in', 'to: 7 in').replace('8.0000', '6.5000')
      return `${head.replace(own, coarse)}${fine}  - id: T-1${rest}`
    }
    const found = told({ instruments })
    expect(found).toHaveLength(4)
    expect(found[0]).toBe(
      'procedure:49:49 below-resolution | 0.0002 in | allow at least 0.001 in; steps in the register: M-1 0.001 in',
    )
  })
})

describe('what nobody on the crew can do', () => {
  const noLead = put('role: lead', 'role: mechanic')
  it('is told with what would help', () => {
    expect(told({ crew: noLead })).toEqual([
      'ERROR procedure:123:9 nobody-can | disposal | add a lead to the crew list',
    ])
    expect(told({ crew: noLead, procedure: put('roles: [mechanic, lead]', 'roles: [lead]') })[0]).toBe(
      'ERROR procedure:32:72 nobody-can | lead | add a lead to the crew list, or mechanic to the roles here',
    )
  })
})
