// Checks between the files of one job, on the good files and on the same with one thing changed in one of them.
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { checkJob, type JobFiles, type TextFile } from '../../src/authoring/check.ts'
import { sourceLine } from '../../src/authoring/diagnostic.ts'

type Name = 'procedure' | 'part' | 'machine' | 'instruments' | 'crew' | 'limit-book'
type Change = readonly [file: Name, from: string, to: string]

const NAMES: readonly Name[] = ['procedure', 'part', 'machine', 'instruments', 'crew', 'limit-book']
const GOOD = new Map(
  NAMES.map((name) => [
    name,
    readFileSync(new URL(`../fixtures/files/good-${name}.yaml`, import.meta.url), 'utf8'),
  ]),
)

function jobWith(changes: readonly Change[]): JobFiles {
  const file = (name: Name): TextFile => {
    const text = changes
      .filter(([changed]) => changed === name)
      .reduce((before, [, from, to]) => {
        if (!before.includes(from)) throw new Error(`${name} holds no ${from}`)
        return before.replace(from, to)
      }, GOOD.get(name) ?? '')
    return { path: name, text }
  }
  const [procedure, machine, instruments, crew] = [
    file('procedure'),
    file('machine'),
    file('instruments'),
    file('crew'),
  ]
  return { procedure, machine, instruments, crew, parts: [file('part')], limitBooks: [file('limit-book')] }
}

function told(changes: readonly Change[]): string[] {
  const files = jobWith(changes)
  const all = [
    files.procedure,
    ...files.parts,
    files.machine,
    files.instruments,
    files.crew,
    ...files.limitBooks,
  ]
  const result = checkJob(files)
  return (result.ok ? result.warnings : result.diagnostics).map((one) => {
    const line = sourceLine(all.find((file) => file.path === one.file)?.text ?? '', one.line)
    const mark = line.slice(one.column - 1, one.endColumn - 1)
    return `${one.file} ${one.severity === 'warning' ? 'warning ' : ''}${one.code} ${mark}`
  })
}

const PART = '  - id: turning\n    kind: part\n    title: Turn it\n    use: turn_by_hand\n'
const beforeStrip = (text: string): Change => ['procedure', '  - id: strip\n', `${text}  - id: strip\n`]

describe('a job', () => {
  it('of good files holds', () => {
    const result = checkJob(jobWith([]))
    expect(result.ok && result.job.parts.get('turn_by_hand')?.title).toBe('Turn by hand')
    expect(told([])).toEqual([])
    expect(told([beforeStrip(PART)])).toEqual([])
  })

  it('is not looked at while one of its files is wrong', () => {
    expect(
      told([
        ['crew', 'role: lead', 'role: boss'],
        ['machine', 'book: test_book', 'book: none'],
      ]),
    ).toEqual(['crew unknown-choice boss'])
  })

  it.each(['part', 'limit-book'] as const)('does not hold with a wrong %s', (name) => {
    const result = checkJob(jobWith([[name, 'title: ', 'titel: ']]))
    expect(result.ok || result.diagnostics.map((one) => one.code)).toEqual(['unknown-key'])
  })

  it('says at each step that uses a broken part that it is broken, and where', () => {
    const again = PART.replace('turning', 'turning_back')
    const result = checkJob(
      jobWith([beforeStrip(PART), beforeStrip(again), ['part', 'kind: gate', 'kind: gat']]),
    )
    const said = result.ok
      ? []
      : result.diagnostics.map(({ file, line, code, hint }) => [file, line, code, hint])
    const line = said[0]?.[1]
    expect(said).toEqual([
      ['procedure', line, 'in-part', 'see part:17:11'],
      ['procedure', Number(line) + 4, 'in-part', 'see part:17:11'],
      ['part', 17, 'unknown-choice', 'did you mean gate?'],
    ])
    expect(result.ok || result.diagnostics[0]?.message).toBe(
      "The part 'turn_by_hand' has an error of its own.",
    )
  })

  it('refuses a file of another kind in a place', () => {
    const files = jobWith([])
    const result = checkJob({ ...files, crew: files.instruments })
    expect(result.ok || result.diagnostics.map((one) => one.message)).toEqual([
      "This file is of the kind 'instruments', and a file of the kind 'crew' is needed.",
    ])
  })
})

const CASES: readonly (readonly [string, readonly Change[], readonly string[]])[] = [
  [
    'a gas limit the machine lacks',
    [['procedure', 'limit: oxygen_air', 'limit: oxigen_air']],
    ['procedure unknown-gas-limit oxigen_air'],
  ],
  [
    'hazards and nothing on how to make safe, here and in a part',
    [
      ['procedure', 'make_safe: [Draw arms out of the bore., Leave the block in.]', ''],
      ['part', 'make_safe: [Hands off the crank.]', ''],
    ],
    ['procedure no-make-safe small_bore_check', 'part no-make-safe turn_by_hand'],
  ],
  [
    'one id for two hazards, here and in a part: the gate of the part would hold both',
    [
      beforeStrip(PART),
      ['part', 'id: pinch', 'id: rotation'],
      ['part', 'holds: [pinch]', 'holds: [rotation]'],
      ['part', 'exposes: [pinch]', 'exposes: [rotation]'],
    ],
    ['procedure in-part turn_by_hand', 'part two-hazards a hand between the moving parts'],
  ],
  [
    'hazards on a site without a rescue plan',
    [['machine', '  rescue: [Two with air packs from the gate. (invented)]\n', '']],
    ['machine no-rescue an invented yard'],
  ],
  [
    'flammables without oxygen',
    [['procedure', ', oxygen: oxygen }', ' }']],
    ['procedure oxygen-first burns'],
  ],
  [
    'oxygen that is none',
    [
      ['procedure', 'limit: oxygen_air', 'limit: flammable_air'],
      ['procedure', 'with: meter }', 'with: meter, oxygen: locks }'],
    ],
    ['procedure not-a-gas-test locks', 'procedure warning limit-twice flammable_air'],
  ],
  [
    'oxygen tested against a limit for flammables',
    [['procedure', 'limit: oxygen_air', 'limit: flammable_air']],
    [
      'procedure warning untested-limit hold_point',
      'procedure oxygen-first oxygen',
      'procedure warning limit-twice flammable_air',
      'procedure not-oxygen oxygen',
    ],
  ],
  [
    'oxygen of another place',
    [
      [
        'machine',
        'gas: flammable\n        place: breathing_zone',
        'gas: flammable\n        place: in_the_opening',
      ],
    ],
    ['procedure other-place oxygen'],
  ],
  [
    'no instrument for a seat',
    [
      ['procedure', 'kinds: [inside_micrometer]', 'kinds: [bore_gauge]'],
      ['procedure', 'how: { inside_micrometer: Take', 'how: { bore_gauge: Take'],
      ['procedure', 'how: { inside_micrometer: Swing', 'how: { bore_gauge: Swing'],
      ['procedure', 'how: { inside_micrometer: Swing', 'how: { bore_gauge: Swing'],
      ['procedure', 'how: { inside_micrometer: Take', 'how: { bore_gauge: Take'],
    ],
    ['procedure no-instrument bore_gauge'],
  ],
  [
    'no micrometer that spans the bore',
    [
      ['instruments', '{ from: 6 in, to: 10 in }', '{ from: 8.1 in, to: 10 in }'],
      ['instruments', 'size: 8.0000', 'size: 9.0000'],
    ],
    ['procedure no-instrument inside_micrometer'],
  ],
  [
    'a meter on another LEL',
    [['instruments', 'gas: methane', 'gas: pentane']],
    ['instruments other-lel pentane'],
  ],
  [
    'a meter on another lower limit',
    [['instruments', '5.0 %vol', '4.4 %vol']],
    ['instruments other-lel methane'],
  ],
  [
    'one meter of two on another LEL',
    [
      [
        'instruments',
        '  - id: G-1',
        '  - id: G-2\n    kind: gas_meter\n    title: Gas meter\n    flammable_sensor: infrared\n    needs_oxygen: { at_least: 0 %vol, source: Manual }\n    lel_basis: { gas: pentane, lower_limit: 1.5 %vol }\n    calibration: { due: 2027-03-31, certificate: C-4 }\n  - id: G-1',
      ],
    ],
    ['instruments warning other-lel pentane'],
  ],
  [
    'a fallback book that is not there',
    [['machine', 'book: test_book', 'book: test_bok']],
    ['machine unknown-book test_bok'],
  ],
  [
    'a machine the procedure is not for',
    [
      ['machine', 'orientation: horizontal', 'orientation: vertical'],
      ['machine', 'oxidising: false', 'oxidising: true'],
    ],
    ['procedure not-for-machine orientation'],
  ],
  [
    'a part that is not for the machine',
    [beforeStrip(PART), ['part', 'lubricated: [true, false]', 'lubricated: [false]']],
    ['procedure in-part turn_by_hand', 'part not-for-machine orientation'],
  ],
  [
    'an unused part that is not for the machine',
    [['part', 'lubricated: [true, false]', 'lubricated: [false]']],
    [],
  ],
  [
    'a crew of one',
    [
      ['crew', '  - { id: AB, name: A. Berg, role: mechanic }\n', ''],
      ['crew', '  - { id: TS, name: T. Sato, role: trainee }\n', ''],
    ],
    ['crew alone C. Novak'],
  ],
  [
    'a crew of trainees',
    [
      ['crew', 'role: mechanic', 'role: trainee'],
      ['crew', 'role: lead', 'role: trainee'],
    ],
    ['procedure nobody-can mechanic', 'procedure nobody-can disposal', 'crew no-mechanic trainee'],
  ],
  [
    'a witness nobody can be',
    [
      ['procedure', 'roles: [mechanic, lead]', 'roles: [lead]'],
      ['crew', 'role: lead', 'role: mechanic'],
    ],
    ['procedure nobody-can lead', 'procedure nobody-can disposal'],
  ],
  [
    'a decision nobody can take',
    [['crew', 'role: lead', 'role: mechanic']],
    ['procedure nobody-can disposal'],
  ],
  [
    'a counterbore to compare with that is not on record',
    [
      ['machine', '  counterbore: 8.250 in\n', ''],
      [
        'procedure',
        'from: nominal, below: 0.010 in, above: 0.010 in',
        'from: counterbore, below: 0.010 in, above: 0.010 in',
      ],
    ],
    ['procedure no-counterbore counterbore'],
  ],
  [
    'a part that is not there',
    [beforeStrip(PART.replace('turn_by_hand', 'turn_by_hnd'))],
    ['procedure unknown-part turn_by_hnd'],
  ],
  [
    'a part in itself',
    [beforeStrip(PART), ['part', 'steps:\n', `steps:\n${PART}`]],
    ['procedure in-part turn_by_hand', 'part part-loop turn_by_hand'],
  ],
  [
    'a procedure as a part of itself',
    [beforeStrip(PART.replace('turn_by_hand', 'small_bore_check'))],
    ['procedure part-loop small_bore_check'],
  ],
  [
    'a hazard that no gate in front holds',
    [beforeStrip(PART), ['procedure', 'holds: [rotation, bad_air]', 'holds: [bad_air]']],
    ['procedure not-held rotation', 'procedure not-held rotation', 'procedure not-held rotation'],
  ],
  [
    'a hazard that the part holds',
    [
      beforeStrip(PART),
      ['procedure', 'holds: [rotation, bad_air]', 'holds: [bad_air]'],
      [
        'part',
        'id: pinch, name: a hand between the moving parts',
        'id: rotation, name: the crank turning over',
      ],
      ['part', '[pinch]', '[rotation]'],
      ['part', '[pinch]', '[rotation]'],
    ],
    [],
  ],
  [
    'a hazard that only a part with a condition holds',
    [
      [
        'procedure',
        '  - id: set_before\n',
        `${PART}    when: { rule: strip == "present", unknown: skip }\n  - id: set_before\n`,
      ],
      ['procedure', 'holds: [rotation, bad_air]', 'holds: [bad_air]'],
      [
        'part',
        'id: pinch, name: a hand between the moving parts',
        'id: rotation, name: the crank turning over',
      ],
      ['part', '[pinch]', '[rotation]'],
      ['part', '[pinch]', '[rotation]'],
    ],
    ['procedure not-held rotation', 'procedure not-held rotation', 'procedure not-held rotation'],
  ],
]

describe('between the files of a job', () => {
  it.each(CASES)('%s', (_name, changes, expected) => {
    expect(told(changes)).toEqual(expected)
  })

  it('names every reason why a procedure refuses a machine', () => {
    const result = checkJob(
      jobWith([
        ['machine', 'orientation: horizontal', 'orientation: vertical'],
        ['machine', 'tandem: false', 'tandem: true'],
      ]),
    )
    expect(result.ok || result.diagnostics[0]?.message).toBe(
      "'small_bore_check' is not for the machine 'XC-8': its cylinder is vertical and it is a tandem.",
    )
  })

  it('gives up on parts that multiply without end', () => {
    const files = jobWith([beforeStrip(PART.replace('turn_by_hand', 'p0'))])
    const parts = Array.from({ length: 16 }, (_, n): TextFile => {
      const uses = PART.replace('turn_by_hand', `p${n + 1}`)
      const steps = n === 15 ? 'steps:\n' : `steps:\n${uses}${uses.replace('turning', 'again')}`
      const text = files.parts[0]?.text.replace('turn_by_hand', `p${n}`).replace('steps:\n', steps) ?? ''
      return { path: `p${n}`, text }
    })
    const result = checkJob({ ...files, parts })
    expect(new Set(result.ok ? [] : result.diagnostics.map((one) => one.code))).toEqual(
      new Set(['in-part', 'late-gate', 'too-many-steps']),
    )
  })
})
