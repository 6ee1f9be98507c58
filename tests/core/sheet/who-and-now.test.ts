// What a trainee alone stumbled over: who may sign what is asked, what a hold point lets in and until when, what stands beside a
// drawing, what is done and void when a job is taken up, and a verdict that is told anew.
import { describe, expect, it } from 'vitest'
import type { Row, SheetStyle } from '../../../src/core/sheet/block.ts'
import { foot } from '../../../src/core/sheet/foot.ts'
import { fitLive } from '../../../src/core/sheet/live.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { entryBlocks, toldShort } from '../../../src/core/sheet/shown-block.ts'
import { AFTER_LINES, BORE_LINES, exampleDefs, GATE_LINES, Walk } from '../../helpers/example.ts'

const STYLE: SheetStyle = { width: 79, record: 'PRACTICE', ascii: false }
const texts = (rows: readonly Row[]) => rows.map(({ text }) => text).join('\n')
const view = (walk: Walk, style = STYLE) => promptView(walk.engine.defs, walk.state, walk.talk, style)
const asked = (walk: Walk) => texts(view(walk).ask)
const lastOf = (walk: Walk, type: string) =>
  walk.entries.flatMap((entry, i) => (entry.type === type ? [{ entry, i }] : [])).at(-1)
/** The block of the last entry of a kind; no entry that bears on it comes after. */
function shown(walk: Walk, type: string, how: 'live' | 'read-back' = 'live'): string {
  const found = lastOf(walk, type)
  if (found === undefined) throw new Error(`no ${type}`)
  return entryBlocks(walk.engine.defs, walk.state, found.entry, STYLE, how)
    .map(({ rows }) => texts(rows))
    .join('\n')
}

const practice = () => new Walk(exampleDefs(), 'PRACTICE')
const stopped = (caller: string, by = 'RO', walk = practice()) =>
  walk.keys(by, 'TC-401-1', '', 'stop', '9', 'slipped', caller)

describe('who may sign', () => {
  it('is named at the witness by initials and name, and whoever did any of it is not', () => {
    const walk = new Walk().toGate().keys(...GATE_LINES.slice(0, -1))
    expect(asked(walk)).toContain('May witness: ML M. Lind, KH K. Haas or PB P. Bright')
    expect(asked(walk)).not.toMatch(/\bRO\b|\bTS\b/)
  })

  it('of a STOP is named at once, before its cause is keyed', () => {
    const walk = practice().keys('RO', 'TC-401-1', '', 'stop')
    expect(asked(walk)).toContain('Lifted after that by a lead: KH K. Haas or PB P. Bright')
  })

  it('of a STOP that a lead called is another lead, and where there is none the job is closed', () => {
    expect(asked(stopped('KH'))).toContain('1  release: PB P. Bright, a lead,')
    const walk = new Walk(
      exampleDefs({ crew: (text) => text.replace(/ {2}- id: PB[\s\S]*?(?= {2}- id: TS)/, '') }),
      'PRACTICE',
    )
    expect(asked(stopped('KH', 'RO', walk))).toMatch(
      /1 {2}release: a lead who had no part in it, and this crew file has none/,
    )
  })

  it('of a STOP on practice may be played by whoever is alone, and lifts it so', () => {
    const walk = stopped('TS', 'TS')
    expect(asked(walk)).toMatch(
      /PRACTICE: alone, sign as that lead\. The example PINs .* leave, and begin another/,
    )
    walk.keys('1', 'KH', 'nothing was wrong')
    expect(walk.prompt.kind).toBe('evidence')
  })

  it('of a STOP that is never lifted is nobody, and practice goes on in another job', () => {
    const walk = practice().keys('RO', 'TC-401-1', '', 'stop', '6', 'a hand', 'RO')
    expect(asked(walk)).toMatch(/never released[\s\S]*PRACTICE: leave, and begin another/)
    expect(asked(walk)).not.toContain('release: ')
  })
})

describe('a hold point that is complete', () => {
  it('says from which sheet on it lets people work, and until when', () => {
    const walk = new Walk().throughGate()
    // The first gas figure was keyed at 06:23:20 and stands for 30 minutes.
    expect(shown(walk, 'gate.opened')).toMatch(
      /complete\n {2}Now: what sheet 3 and those after it ask\. Nothing else\.\n {2}Until 06:\d\d, or until anything here changes: then come out\.$/,
    )
    expect(shown(walk, 'gate.opened')).not.toMatch(/\bsafe\b|\bgood\b/)
  })

  it('and was shown anew names the first sheet that is still open', () => {
    const walk = new Walk()
      .toBore()
      .keys(...BORE_LINES.slice(0, 2))
      .wait(40)
    walk.bring({ do: 'tick' })
    walk.keys('ALL OUT')
    expect(walk.prompt.kind).toBe('evidence')
    for (let n = 0; n < 20 && walk.prompt.kind === 'evidence'; n++) {
      const { evidence, key } = walk.prompt.item
      const words = evidence.kind === 'words' ? evidence.words : 'ML'
      const gas = evidence.kind === 'gas' ? (/oxygen|o2/i.test(key) ? '20.9' : '0') : null
      walk.key(gas ?? words)
    }
    expect(walk.prompt).toMatchObject({ kind: 'read', step: { number: 7 } })
    expect(shown(walk, 'gate.opened')).toContain('Now: what sheet 7 and those after it ask.')
  })
})

describe('beside a drawing', () => {
  const whole = (walk: Walk, rows = 24, taken = 0) => {
    const { defs } = walk.engine
    const live = fitLive({
      view: view(walk),
      foot: foot(defs, walk.state, walk.now),
      style: STYLE,
      rows,
      columns: 80,
      notice: null,
      taken,
    })
    return live.above.map(({ text }) => text).join('\n')
  }

  it('stands what its letters mean where it is new, also where there is little room', () => {
    const walk = new Walk().toBore()
    for (const taken of [0, 3])
      expect(whole(walk, 24, taken)).toContain('HE head end, CE crank end; clock face')
  })

  it('stands what the same station measures in the other direction, drawn and told', () => {
    const walk = new Walk().toBore().keys('9.5033', '9.5034')
    expect(whole(walk)).toContain('TOP TO BOTTOM here: 9.5034 in')
    expect(texts(view(walk, { ...STYLE, linear: true }).drawings[0] ?? [])).toContain(
      'Measured, TOP TO BOTTOM here: 9.5034 in.',
    )
    walk.keys('9.5021', '9.5020')
    expect(whole(walk)).not.toContain('here: ')
  })
})

describe('a job that is taken up', () => {
  it('says what is done, what is void and what comes next', () => {
    const walk = new Walk().toBore().keys('9.5033')
    walk.bring({ do: 'leave' })
    walk.bring({ do: 'take-up' })
    expect(shown(walk, 'job.taken-up')).toMatch(
      /Done: \d+ of 20 sheets[\s\S]*Taken last, and on record: 7\.1 [\s\S]*Void: all that was shown at hold point 2, [\s\S]*Next: initials of whoever goes on; then the plate; then hold point 2, shown anew; then sheet 7, Bore\./,
    )
  })

  it('read back, says nothing of what comes next, and nor does a hold point', () => {
    const walk = new Walk().toBore()
    walk.bring({ do: 'take-up' })
    for (const type of ['job.taken-up', 'gate.opened'])
      expect(shown(walk, type, 'read-back')).not.toMatch(/Next: |Now: |Until /)
  })

  it('says so where nothing was shown', () => {
    const walk = new Walk()
    walk.bring({ do: 'leave' })
    walk.bring({ do: 'take-up' })
    expect(shown(walk, 'job.taken-up')).toContain('Void: nothing')
  })
})

describe('a verdict that is told anew', () => {
  const blocks = (walk: Walk) => {
    const { defs } = walk.engine
    const entry = lastOf(walk, 'verdict.given')?.entry
    return entry === undefined ? [] : entryBlocks(defs, walk.state, entry, STYLE)
  }

  it('tells its limits once, and its word and every caution again', () => {
    const walk = new Walk().toVerdict()
    const before = blocks(walk)
    walk.keys('back', 'read anew', '9.5002')
    const again = toldShort(blocks(walk), before)
    const [first, second] = [before, again].map((all) => all.map(({ rows }) => texts(rows)).join('\n'))
    expect(first).toMatch(/largest[\s\S]*Machine book rev\. 4, sheet 12/)
    expect(second).not.toContain('sheet 12')
    expect(second).toContain('All else, its limits too, as in the verdict before.')
    expect(second).toMatch(/MONITOR[\s\S]*taper governs: [\s\S]*Fall-back limits were used/)
    expect(toldShort(before, [])).toBe(before)
  })

  it('has no limit or source without the figure it is of, where it was HOLD before', () => {
    const lines = AFTER_LINES.map((line) => (line === '9.5001' ? '9.5012' : line))
    const walk = new Walk().toBore().keys(...BORE_LINES, ...lines)
    const before = blocks(walk)
    expect(before.flatMap(({ rows }) => texts(rows)).join()).toContain('HOLD')
    walk.keys('back', 'misread', '9.5001')
    const [whole = '', short = ''] = [blocks(walk), toldShort(blocks(walk), before)].map((all) =>
      all.map(({ rows }) => texts(rows)).join('\n'),
    )
    const hung = short.split('\n').filter((text) => /^ {9}/.test(text))
    expect(hung.length).toBeGreaterThan(0)
    const all = whole.split('\n')
    for (const text of hung) {
      const head = all.slice(0, all.indexOf(text)).findLast((one) => !one.startsWith(' '))
      expect(short).toContain(head)
    }
  })

  it('is not given anew for a figure that is keyed as it stands', () => {
    const walk = new Walk().toVerdict()
    const { seq } = walk.state
    walk.keys('back', 'misread', '9.5001')
    expect(walk.said.at(-1)).toContain('nothing was changed')
    expect([walk.state.seq, walk.talk.ask]).toEqual([seq, null])
  })
})

describe('under STOP', () => {
  it('the foot says at which sheet the job stands', () => {
    const walk = new Walk().toBore().keys('stop')
    expect(foot(walk.engine.defs, walk.state, walk.now).text).toMatch(/^Sheet 7 of 20 .* STOP open$/)
  })
})
