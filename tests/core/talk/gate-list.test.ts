// All that a hold point asks for at once, what a witness compares, and where each lock goes.
import { describe, expect, it } from 'vitest'
import { layOut } from '../../../src/core/sheet/block.ts'
import { foot } from '../../../src/core/sheet/foot.ts'
import { fitLive } from '../../../src/core/sheet/live.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { GATE_LINES, LOCK_LINES, Walk } from '../../helpers/example.ts'

const said = (walk: Walk, line: string) => {
  walk.said = []
  walk.key(line)
  return walk.said
}

describe('the word show at a hold point', () => {
  it('lists what is shown and what is open, by sort', () => {
    const walk = new Walk().toGate()
    expect(said(walk, 'show')).toEqual([
      'Hold point 2: 0 of 17 shown.',
      'Open, locks: main driver breaker, E-1; barring motor breaker, E-2; suction block valve, V-11; discharge block valve, V-12; recycle valve, V-13; unloader gas supply, V-17.',
      'Open, keyed in words: try start; bleeds; block; bump.',
      'Open, gas where people breathe: oxygen; flammables; H2S.',
      'Open, gas inside the opening: oxygen; flammables; H2S.',
      'Open, witness.',
    ])
    walk.keys(...GATE_LINES.slice(0, 12))
    const lines = said(walk, 'show all')
    expect(lines[0]).toBe('Hold point 2: 11 of 17 shown.')
    expect(lines[1]).toMatch(
      /^Shown, locks: L-101 main driver breaker, E-1; .*L-106 unloader gas supply, V-17\.$/,
    )
    expect(lines[2]).toBe('Shown, keyed in words: NO START; NO FLOW; BLOCKED BOTH WAYS; METER ANSWERED.')
    expect(lines[3]).toMatch(/^Shown, gas where people breathe with G-7: 20\.9.%vol oxygen\.$/)
    expect(walk.prompt.kind).toBe('evidence')
  })

  it('has room on 80 by 24 above its own prompt', () => {
    const walk = new Walk().toGate().keys(...LOCK_LINES)
    const style = { width: 79, record: 'EXAMPLE' as const, ascii: false }
    const lines = layOut(
      { margin: '', rows: said(walk, 'show').map((text) => ({ text, tone: 'plain' as const })) },
      style,
    )
    const { defs } = walk.engine
    const view = promptView(defs, walk.state, walk.talk, style)
    const live = fitLive({
      view,
      foot: foot(defs, walk.state, walk.now),
      style,
      rows: 24,
      columns: 80,
      notice: null,
      said: lines.length,
    })
    expect(live.turn).toBeNull()
    expect(lines.length + live.above.length + 1 + live.below.length).toBeLessThan(24)
  })

  it('names no number of what fell, as it is to be read anew', () => {
    const walk = new Walk().throughGate()
    walk.bring({ do: 'leave' })
    walk.bring({ do: 'take-up' })
    expect(said(walk.keys('RO'), 'show').join(' ')).not.toContain('L-101')
  })

  it('tells elsewhere that none is asked', () => {
    expect(said(new Walk().keys('RO', 'TC-401-1'), 'show')[0]).toMatch(/^show lists what a hold point asks/)
    expect(said(new Walk().toBore(), 'show')[0]).toBe('No hold point is asked here; the last one:')
  })
})

describe('the witness', () => {
  it.each([
    [79, 24, 80],
    [39, 15, 40],
  ])('has what is to be compared in the question itself, on %i by %i', (width, rows, columns) => {
    const walk = new Walk().toGate().keys(...GATE_LINES.slice(0, -1))
    const style = { width, record: 'EXAMPLE' as const, ascii: false }
    const view = promptView(walk.engine.defs, walk.state, walk.talk, style)
    const text = view.ask.map((r) => r.text).join('\n')
    for (const lock of LOCK_LINES) expect(text).toContain(lock)
    expect(text).toContain('NO START; NO FLOW')
    expect(text).toContain('Gas inside the opening with G-7: 20.8\u00a0%vol oxygen')
    const input = {
      view,
      foot: foot(walk.engine.defs, walk.state, walk.now),
      style,
      rows,
      columns,
      notice: null,
    }
    const first = fitLive(input)
    expect(first.tooSmall).toBe(false)
    const sides = Array.from({ length: first.turn?.of ?? 1 }, (_, n) =>
      fitLive({ ...input, side: { of: 'front', n } }),
    )
    const shown = sides.flatMap(({ above }) => above.map((line) => line.text)).join(' ')
    for (const lock of LOCK_LINES) expect(shown).toContain(lock)
    if (rows === 24) expect(first.turn).toBeNull()
  })
})

describe('which lock goes where', () => {
  it.each(['which lock goes where?', 'where do the locks go?', 'what are the isolation points?'])(
    '%s is told from the machine record',
    (line) => {
      const lines = said(new Walk().toGate(), line).join(' ')
      expect(lines).toContain('What turns the machine: main driver breaker, E-1; barring motor breaker, E-2.')
      expect(lines).toContain('suction block valve, V-11')
    },
  )
})
