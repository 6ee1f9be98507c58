// The setting standard beside its check, by the register of instruments, and what to do where it is read further off than it may be.
import { describe, expect, it } from 'vitest'
import { entryBlock } from '../../../src/core/sheet/entry-block.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { entryBlocks } from '../../../src/core/sheet/shown-block.ts'
import { becauseRows } from '../../../src/core/sheet/verdict-block.ts'
import { AFTER_LINES, BORE_LINES, Walk } from '../../helpers/example.ts'

const STYLE = { width: 79, record: 'EXAMPLE' as const, ascii: false }
const toCheck = () => new Walk().throughGate().keys('1', '1', '71.2', '70.4', '1')
const rows = (walk: Walk) =>
  promptView(walk.engine.defs, walk.state, walk.talk, STYLE).rows.map(({ text }) => text)
const taken = (walk: Walk) =>
  entryBlock(walk.engine.defs, walk.state, walk.last)?.rows.map(({ text }) => text) ?? []

describe('a check on the setting standard', () => {
  it('shows which standard it is, its size and how far off it may be read', () => {
    expect(rows(toCheck())).toContain('Standard: ring R-95, 9.5000 in. It may read up to 0.0002 in off.')
    expect(rows(new Walk().toBore()).join(' ')).not.toContain('Standard:')
  })

  it('further off says what to do before anything is measured', () => {
    const walk = toCheck().keys('9.5004')
    expect(taken(walk).join(' ')).toContain('0.0004 in over the standard, and 0.0002 in is allowed')
    expect(taken(toCheck().keys('9.5002'))).toHaveLength(2)
    expect(taken(toCheck().keys('9.4997')).join(' ')).toContain('0.0003 in under the standard')
  })

  it('further off waits before anything is measured: again, another gauge, or kept with a reason', () => {
    const off = () => toCheck().keys('9.5004')
    expect(off().prompt.kind).toBe('doubt')
    expect(off().keys('1').prompt).toMatchObject({ kind: 'read', step: { id: 'set_before' } })
    expect(off().keys('3', 'the ring was warm').prompt).toMatchObject({ kind: 'read', step: { id: 'bore' } })
    const other = off().keys('instrument')
    const question = other.talk.ask
    const which = question?.kind === 'doubt-which' ? question.instruments.indexOf('M-3') + 1 : 0
    other.keys(String(which), 'off on its ring', '9.5004 on 9.5000')
    expect(other.state.doubt).toBeNull()
    // How warm the other one is is not known from this one.
    expect(other.prompt).toMatchObject({ kind: 'read', step: { id: 'gauge_temp_before' } })
    // There is none: the register has no other that may be used.
    expect(other.key('70.4')).toBe('no-gauge')
    expect(other.said.at(-1)).toMatch(/^No gauge of the register may be used for the bore/)
    expect(other.prompt).toMatchObject({ kind: 'read', step: { id: 'gauge_temp_before' } })
    expect(
      Object.values(off().state.readings)
        .flat()
        .map(({ step }) => step),
    ).not.toContain('set_before')
  })

  it('further off, and kept: what comes of it is said once more, and a verdict on it names the check, and no figure near its limit', () => {
    const walk = toCheck().keys('9.5004', '3', 'the ring was warm')
    expect(taken(walk).join(' ')).toMatch(
      /0\.0004 in over the standard.*the word instrument puts it aside.*the verdict is HOLD/,
    )
    walk.keys(...BORE_LINES, ...AFTER_LINES)
    const verdict = walk.entries.findLast((e) => e.type === 'verdict.given')
    if (verdict?.type !== 'verdict.given') throw new Error('no verdict')
    expect(verdict.verdict.result.verdict).toBe('HOLD')
    const told = becauseRows(walk.engine.defs, verdict.verdict).map(({ text }) => text)
    expect(told.join(' ')).toContain('set-check before the readings is out by more than is allowed')
    const whole = entryBlocks(walk.engine.defs, walk.state, verdict, STYLE).flatMap(({ rows: all }) => all)
    expect(whole.map(({ text }) => text).join(' ')).not.toContain('makes it HOLD')
  })

  it('a check that is not off says nothing where it is kept for another reason', () => {
    const kept = new Walk().toBore().keys('9.60', '3', 'bored out last year')
    expect(taken(kept).join(' ')).not.toContain('standard')
  })

  it('further off after measuring says what is in doubt', () => {
    const walk = new Walk().toBore().keys(...BORE_LINES, ...AFTER_LINES.slice(0, -1), '9.5004')
    const check = walk.entries.findLast((e) => e.type === 'reading.taken')
    const block = check === undefined ? null : entryBlock(walk.engine.defs, walk.state, check)
    expect(block?.rows.at(-1)?.text).toContain('every size since the check before is in doubt')
  })
})
