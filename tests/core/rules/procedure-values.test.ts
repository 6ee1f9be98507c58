// Derived values of a procedure: as a lead writes them, checked, and known or unknown while a job is walked.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { readDefinition } from '../../../src/authoring/definition-file.ts'
import { lintProcedure } from '../../../src/core/definition/lint-procedure.ts'
import type { Procedure } from '../../../src/core/definition/procedure.ts'
import { assemble } from '../../../src/core/job/definitions.ts'
import { applicability } from '../../../src/core/job/next.ts'
import { hangsOn } from '../../../src/core/job/values.ts'
import { compileValues } from '../../../src/core/rules/procedure-values.ts'
import { BORE_LINES, exampleDefs, ROOT, Walk } from '../../helpers/example.ts'
import { COMPUTATIONS } from './sample-scope.ts'

const TEXT = readFileSync(join(ROOT, 'procedures/bore-inspection.yaml'), 'utf8')

const VALUES = `values:
  - { id: growth, title: Growth over nominal, kind: length, is: max(bore) - machine.nominal, unit: in }
  - { id: share, title: Share of nominal, kind: ratio, is: growth / machine.nominal, unit: "%" }
  - { id: drift, title: Drift, kind: temperature-difference, is: part_temp_after - part_temp_before }

steps:
`

/** The shipped procedure with values, and with a rule on the counterbore reading. */
function withValues(rule: string, unknown: string, values = VALUES) {
  return (text: string) =>
    text
      .replace(/^steps:\n/m, () => values)
      .replace(
        '    title: Counterbore\n',
        () => `    title: Counterbore\n    when: { rule: '${rule}', unknown: ${unknown} }\n`,
      )
}

function procedure(change: (text: string) => string): Procedure {
  const read = readDefinition(change(TEXT), 'p.yaml')
  if (!read.ok) throw new Error(read.diagnostics.map((d) => `${d.line}: ${d.message}`).join('\n'))
  if (read.kind !== 'procedure') throw new Error(read.kind)
  return read.value
}

/** Findings of a procedure whose values were swapped for others, as code and path. */
function found(values: Procedure['values'], change: (p: Procedure) => Procedure = (p) => p) {
  const base = procedure((text) => text)
  return lintProcedure(change({ ...base, values }), COMPUTATIONS).map(
    (one) => `${one.code} ${one.path.join('.')}`,
  )
}

const value = (
  id: string,
  kind: NonNullable<Procedure['values']>[number]['kind'],
  is: string,
  unit?: string,
) => ({
  id,
  title: id,
  kind,
  is,
  ...(unit === undefined ? {} : { unit }),
})

describe('the checks of values', () => {
  it('hold for values that refer to steps, facts and earlier values', () => {
    expect(() => procedure(withValues('growth > length("0.005 in")', 'hold'))).not.toThrow()
  })

  it.each([
    ['a kind that does not fit', [value('x', 'area', 'max(bore)')], 'value-kind values.0.is'],
    ['a name that is not there', [value('x', 'length', 'max(boer)')], 'unknown-step values.0.is'],
    [
      'a later value',
      [value('x', 'length', 'y'), value('y', 'length', 'max(bore)')],
      'used-too-early values.0.is',
    ],
    ['itself', [value('x', 'length', 'x + max(bore)')], 'used-too-early values.0.is'],
    ['a tell step', [value('x', 'length', 'brief')], 'no-outcome values.0.is'],
    ['nothing that is measured', [value('x', 'length', 'length("4 in")')], 'rule-constant values.0.is'],
    ['a unit of another kind', [value('x', 'length', 'max(bore)', 'psi')], 'wrong-unit values.0.unit'],
    ['a unit on a number', [value('x', 'number', 'count(bore)', 'in')], 'wrong-unit values.0.unit'],
    ['the id of a step', [value('bore', 'number', 'count(strip_diameter)')], 'repeated-id values.0.id'],
    [
      'an id twice',
      [value('x', 'length', 'max(bore)'), value('x', 'length', 'min(bore)')],
      'repeated-id values.1.id',
    ],
    ['a word kept for rules', [value('machine', 'length', 'max(bore)')], 'reserved-word values.0.id'],
  ])('refuse %s', (_, values, finding) => {
    expect(found(values)).toEqual([finding])
  })

  it('blame a value that does not hold once, and not what uses it', () => {
    const values = [value('x', 'length', 'max(boer)'), value('y', 'length', 'x * 2')]
    expect(found(values)).toEqual(['unknown-step values.0.is'])
  })

  it('say where in the text', () => {
    const base = procedure((text) => text)
    const values = [value('x', 'length', 'max(bore) - max(boer)')]
    const [finding] = lintProcedure({ ...base, values }, COMPUTATIONS)
    expect(finding).toMatchObject({ within: { start: 16, end: 20 }, hint: 'did you mean bore?' })
  })

  it('know when a value is known: a rule before that is refused', () => {
    const rule = (id: string, text: string) => (p: Procedure) => ({
      ...p,
      steps: p.steps.map((step) =>
        step.id === id ? { ...step, when: { rule: text, unknown: 'hold' as const } } : step,
      ),
    })
    const values = [
      value('growth', 'length', 'max(bore) - machine.nominal'),
      value('twice', 'length', 'growth * 2'),
    ]
    const text = 'twice > length("0.005 in")'
    const too = found(values, rule('set_before', text))
    expect(too.some((one) => one.startsWith('used-too-early steps.') && one.endsWith('when.rule'))).toBe(true)
    expect(found(values, rule('surface', text))).toEqual([])
    const compiled = compileValues({ ...procedure((t) => t), values }, COMPUTATIONS)
    expect(compiled.values.map((one) => one.steps)).toEqual([['bore'], ['bore']])
  })

  it('take a named computation', () => {
    const call =
      'compute("plate-load", {"pressure": machine.barometer, "area": max(bore) * machine.stroke}).load'
    expect(found([value('load', 'force', call, 'lbf')])).toEqual([])
    expect(found([value('load', 'length', call)])).toEqual(['value-kind values.0.is'])
  })

  it('keep words of the language out of the ids of steps too', () => {
    for (const id of ['list', 'map', 'cel', 'machine', 'constructor', 'in']) {
      const base = procedure((text) => text)
      const steps = base.steps.map((step, n) => (n === 0 ? { ...step, id } : step))
      expect(lintProcedure({ ...base, steps }).map((one) => one.code)).toEqual(['reserved-word'])
    }
  })

  it('are made again when a job is put together, and refused there', () => {
    const defs = exampleDefs()
    const broken = { ...defs.procedure, values: [value('x', 'area', 'max(bore)')] }
    const put = assemble({ ...defs, procedure: broken, parts: new Map() })
    expect(put.ok ? '' : put.error.code).toBe('value-kind')
  })
})

describe('a rule on a derived value, in a job', () => {
  const jobWith = (rule: string, unknown: string) =>
    new Walk(exampleDefs({ procedure: withValues(rule, unknown) }))
  const ofCounterbore = (walk: Walk) => {
    const placed = walk.engine.defs.steps.find((step) => step.id === 'counterbore')
    if (placed === undefined) throw new Error('no counterbore')
    return applicability(walk.engine.defs, walk.state, placed)
  }

  it('is worked out from the settled readings and the machine record', () => {
    // The greatest of the example's readings is 9.50685 in, on a nominal of 9.500 in.
    const yes = jobWith('growth > length("0.0068 in")', 'hold')
      .toBore()
      .keys(...BORE_LINES)
    const no = jobWith('growth > length("0.0069 in")', 'hold')
      .toBore()
      .keys(...BORE_LINES)
    expect([ofCounterbore(yes), ofCounterbore(no)]).toEqual(['do', 'skip'])
    const share = jobWith('share > ratio("0.0720 %") && share < ratio("0.0722 %")', 'hold')
    expect(ofCounterbore(share.toBore().keys(...BORE_LINES))).toBe('do')
  })

  it('is unknown until every place has a value that settled', () => {
    const walk = jobWith('growth > length("0.001 in")', 'hold').toBore()
    for (const line of BORE_LINES) {
      expect(ofCounterbore(walk), line).toBe('hold')
      walk.keys(line)
    }
    expect(ofCounterbore(walk)).toBe('do')
  })

  it('is unknown when a place cannot be measured or its repeats do not agree', () => {
    const notMeasured = jobWith('growth > length("0.001 in")', 'hold').toBore()
    notMeasured.bring({ do: 'not-applicable', place: 'bore.head_end.vertical', why: 'a port is there' })
    notMeasured.keys(...BORE_LINES.slice(2))
    expect(ofCounterbore(notMeasured)).toBe('hold')
    const apart = jobWith('growth > length("0.001 in")', 'do').toBore()
    apart.keys('9.5033', '9.5043', '9.5053', '9.5063', ...BORE_LINES.slice(2))
    expect(ofCounterbore(apart)).toBe('do')
  })

  it('is unknown for a fact that is not on record', () => {
    const machine = (text: string) => text.replace(/^ {2}ring_differential: .*\n/m, '')
    const rule = 'machine.ring_differential > pressure_difference("1 psi") && growth > length("1 um")'
    const change = { procedure: withValues(rule, 'hold') }
    const on = new Walk(exampleDefs(change)).toBore().keys(...BORE_LINES)
    const off = new Walk(exampleDefs({ ...change, machine })).toBore().keys(...BORE_LINES)
    expect([ofCounterbore(on), ofCounterbore(off)]).toEqual(['do', 'hold'])
  })

  it('changes with a correction, and what hung on it is void', () => {
    const walk = jobWith('growth > length("0.0068 in")', 'hold')
      .toBore()
      .keys(...BORE_LINES)
    expect(hangsOn(walk.engine.defs, 'bore')).toContain('counterbore')
    expect(hangsOn(walk.engine.defs, 'part_temp_before')).not.toContain('counterbore')
    for (const reading of walk.state.readings['bore.centre.vertical'] ?? [])
      walk.bring({ do: 'correct', of: reading.seq, typed: '9.5060', why: 'read again after 4000 h' })
    expect(ofCounterbore(walk)).toBe('skip')
  })

  it('has no value from a reading that is now to be skipped', () => {
    const rule = 'max(strip_diameter) > length("1 in")'
    const walk = jobWith(rule, 'hold')
      .toBore()
      .keys(...BORE_LINES, '1', '9.5001', '9.5001', '9.5002', '9.5002')
    expect(ofCounterbore(walk)).toBe('do')
    walk.bring({ do: 'reopen', step: 'strip', why: 'looked again' })
    walk.keys('3')
    expect(walk.state.done.strip).toBe('gone')
    expect(Object.keys(walk.state.readings)).toContain('strip_diameter.strip.vertical')
    expect(ofCounterbore(walk)).toBe('hold')
  })
})
