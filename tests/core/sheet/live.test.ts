// The live part of the screen at every prompt of the example, on four sizes of terminal.
import { describe, expect, it } from 'vitest'
import { widthOf } from '../../../src/core/lib/text.ts'
import { foot, footLines } from '../../../src/core/sheet/foot.ts'
import { askFolded, fitLive, type Live, type SideUp } from '../../../src/core/sheet/live.ts'
import { type PromptView, promptView } from '../../../src/core/sheet/prompt-view.ts'
import { Walk } from '../../helpers/example.ts'
import { walkExample } from '../../helpers/walked.ts'

interface Shot {
  readonly view: PromptView
  readonly live: Live
  readonly text: string
}

function shot(
  walk: Walk,
  columns: number,
  rows: number,
  notice: string | null = null,
  said = 0,
  side: SideUp = { of: 'front', n: 0 },
  taken = 0,
): Shot {
  const style = { width: Math.max(30, columns - 1), record: 'EXAMPLE' as const, ascii: false }
  const { defs } = walk.engine
  const view = promptView(defs, walk.state, walk.talk, style)
  const live = fitLive({
    view,
    foot: foot(defs, walk.state, walk.now),
    style,
    rows,
    columns,
    notice,
    said,
    side,
    taken,
  })
  const lines = [...live.above, { margin: live.inputMargin, text: '' }, ...live.below]
  return { view, live, text: lines.map((l) => l.margin + l.text).join('\n') }
}

/** As one run of words, so that it does not matter where lines broke. */
const run = (text: string) =>
  text
    .split('\n')
    .map((line) => line.replace(/^.*?│/, '').trim())
    .join(' ')

function everyShot(columns: number, rows: number, notice: string | null = null): Shot[] {
  const shots: Shot[] = []
  walkExample((walk) => shots.push(shot(walk, columns, rows, notice)))
  return shots
}

const height = ({ above, below }: Live) => above.length + 1 + below.length

describe.each([
  [80, 24],
  [60, 20],
  [40, 15],
  [120, 40],
  [31, 8],
])('at %i columns and %i rows', (columns, rows) => {
  const shots = everyShot(columns, rows, 'Everything above is on disk. Control-C once more leaves the job.')
  const plain = everyShot(columns, rows)

  it('stays at least one row below the height of the terminal, and within its width', () => {
    for (const { live, text } of [...shots, ...plain]) {
      expect(height(live)).toBeLessThanOrEqual(rows - 1)
      for (const line of text.split('\n')) expect(widthOf(line)).toBeLessThan(columns)
    }
  })

  it('shows hazard and trouble whole, or says that the screen is too small', () => {
    let seen = 0
    for (const { view, live, text } of plain) {
      if (live.tooSmall) expect(run(text)).toContain('Screen too small')
      else if (live.turn === null)
        for (const must of view.must) {
          expect(run(text)).toContain(must.text)
          seen++
        }
    }
    if (rows > 15) expect(seen).toBeGreaterThan(40)
  })

  it('shows the whole question and the foot beside the line being keyed', () => {
    for (const { view, live, text } of plain) {
      if (live.tooSmall || live.turn !== null) continue
      for (const ask of view.ask.filter((r) => r.tone !== 'faint'))
        expect(run(text)).toContain(ask.text.trim())
      expect(text).toMatch(
        rows > 15 ? /Sheet (\d+|-) of 20/ : /Sheet (\d+|-) of 20|lapse[sd] \d\d:\d\d|Hold point fallen/,
      )
      expect(live.inputMargin).toMatch(/^EXAMPLE/)
    }
  })

  it('shows the place to measure and the choice of instruments under their whole title', () => {
    for (const { view, live, text } of plain)
      if (!live.tooSmall && !view.titleMayShorten) expect(run(text)).toContain(view.title)
  })
})

describe('on small screens', () => {
  it.each([
    [80, 24],
    [60, 20],
    [120, 40],
    [40, 19],
    [55, 15],
  ])('no prompt of the bore inspection is too small for %i by %i', (columns, rows) => {
    expect(
      everyShot(columns, rows)
        .filter((s) => s.live.tooSmall)
        .map((s) => s.view.title),
    ).toEqual([])
  })

  it.each([
    [40, 15],
    [31, 14],
  ])('at %i by %i what has no room at once is folded, and nothing of it is lost', (columns, rows) => {
    let folded = 0
    let pointed = 0
    walkExample((walk) => {
      const first = shot(walk, columns, rows)
      const { turn } = first.live
      expect(first.live.tooSmall).toBe(false)
      if (turn === null) return
      folded++
      const sides = Array.from({ length: turn.of }, (_, n) =>
        shot(walk, columns, rows, null, 0, { of: 'front', n }),
      )
      const whole = sides.map(({ live }) => run(live.above.map((l) => l.margin + l.text).join('\n')))
      for (const { live } of sides) expect(height(live)).toBeLessThanOrEqual(rows - 1)
      const { must, rows: words, wordsKnown, byEnter } = first.view
      const due = [
        ...must,
        ...(wordsKnown || byEnter ? [] : words),
        ...askFolded(first.view).filter((r) => r.tone !== 'faint'),
      ]
      // What is to be done ends right over the word that says it is done.
      const told = words.at(-1)?.text.split(' ').slice(-3).join(' ')
      if (byEnter && told !== undefined && columns >= 40)
        expect(whole.at(-1)).toContain(`${told} Key done when it is done`)
      const withoutTitle = whole.map((side) => side.replace(/Enter(?: turns over:|: over,) \d of \d/, ''))
      for (const { text } of due)
        for (const word of text.split(/\s+/)) expect(withoutTitle.join(' ')).toContain(word)
      // The hazard comes first; over the question it stands whole, or a line says where it does.
      if (must[0] === undefined) return
      const begins = must[0].text.split(' ').slice(0, 2).join(' ')
      expect(whole[0]).toContain(begins)
      for (const side of whole.slice(turn.front)) {
        if (side.includes('Up shows it')) pointed++
        else expect(side).toContain(must[0].text)
      }
      expect(turn.front).toBeGreaterThan(0)
    })
    expect(folded).toBeGreaterThan(10)
    expect(pointed).toBeGreaterThan(0)
  })

  it('what can be put right is listed under a hazard of the step at 40 by 15', () => {
    const at = new Walk().throughGate()
    at.key('correct')
    const { live, text } = shot(at, 40, 15)
    expect(live.tooSmall).toBe(false)
    expect(live.choices).toBeGreaterThanOrEqual(3)
    expect(run(text)).toContain('Which one? Its number')
    expect(height(live)).toBeLessThanOrEqual(14)
  })

  it('what is to be done at once stands on a side that is up first', () => {
    const walk = new Walk().toBore().wait(31).keys('')
    const { turn, tooSmall } = shot(walk, 31, 14).live
    expect(tooSmall).toBe(false)
    expect(turn).toMatchObject({ isUrgent: true })
    expect(run(shot(walk, 31, 14, null, 0, { of: 'question', n: 0 }).text)).toContain(
      'COME OUT AND STAND CLEAR.',
    )
  })

  it('names the height that would do, and that height does', () => {
    walkExample((walk) => {
      const small = shot(walk, 40, 6)
      if (!small.live.tooSmall) return
      const needed = Number(/make it (\d+) rows high/.exec(run(shot(walk, 40, 8).text))?.[1] ?? Number.NaN)
      if (Number.isNaN(needed)) return
      expect(shot(walk, 40, needed).live.tooSmall).toBe(false)
      expect(shot(walk, 40, needed - 1).live.tooSmall).toBe(true)
    })
  })

  it('is too narrow where the sheet would lose its right-hand side', () => {
    walkExample((walk) => {
      const { live, text } = shot(walk, 25, 40)
      expect(live.tooSmall).toBe(true)
      expect(run(text)).toContain('31 columns wide')
    })
  })

  it('drops the drawing first and the step text next, and shows both where there is room', () => {
    const titled = (shots: Shot[]) => shots.find((s) => s.view.title.startsWith('Bore, CENTRE')) as Shot
    const large = titled(everyShot(120, 40))
    expect(large.text).toContain('Measure the diameter here')
    expect(large.view.drawings[0]?.length).toBeGreaterThan(3)
    for (const line of large.view.drawings[0] ?? []) expect(large.text).toContain(line.text.trim())
    const small = titled(everyShot(60, 14))
    expect(small.live.tooSmall).toBe(false)
    expect(small.text).not.toContain(small.view.drawings.at(-1)?.[1]?.text.trim())
  })
})

describe('the foot', () => {
  const whole = {
    text: '',
    sheet: 'Sheet 28 of 439',
    names: ['TC-401-1', 'RO, ML, KH'],
    stands: ['Gas 12 min old, lapses 07:24', 'STOP open'],
    warning: null,
  }

  it.each([
    [90, ['Sheet 28 of 439   TC-401-1   RO, ML, KH   Gas 12 min old, lapses 07:24   STOP open']],
    [70, ['Sheet 28 of 439   TC-401-1   Gas 12 min old, lapses 07:24   STOP open']],
    [60, ['Sheet 28 of 439   Gas 12 min old, lapses 07:24   STOP open']],
    [45, ['Sheet 28 of 439   TC-401-1   RO, ML, KH', 'Gas 12 min old, lapses 07:24   STOP open']],
    [29, ['Sheet 28 of 439   TC-401-1', 'Gas 12 min old, lapses 07:24', 'STOP open']],
  ])('of %i columns drops people first, and never what lapses or an open STOP', (width, lines) => {
    expect(footLines(whole, width)).toEqual(lines)
  })
})

describe('the words under the foot', () => {
  it('within a question are those that are heard there', () => {
    const walk = new Walk().toBore()
    expect(shot(walk, 80, 24).text).toMatch(/Words: help why ask correct back leave stop$/)
    walk.key('n/a')
    expect(shot(walk, 80, 24).text).toMatch(/Words: back safe stop$/)
    expect(shot(walk, 40, 20).text).toMatch(/Tab: make safe {3}Words: back safe stop$|Tab: make safe$/)
    for (const word of ['safe', 'back']) walk.key(word)
    expect(walk.talk.ask).toBeNull()
  })

  it('under STOP are none that change what was said before, as that is refused', () => {
    const walk = new Walk().toBore().keys('stop', '3', 'it turned', '?')
    expect(walk.prompt.kind).toBe('stopped')
    const [words = ''] = /Words: .*$/.exec(shot(walk, 100, 30).text) ?? []
    expect(words).toMatch(/Words: help why .*leave stop$/)
    expect(words).not.toMatch(/correct|back/)
    for (const word of ['correct', 'back']) {
      walk.key(word)
      expect(walk.talk.ask).toBeNull()
    }
  })
})

describe('what was said above', () => {
  it.each([
    [80, 24],
    [40, 15],
  ])(
    'stays in sight at %i by %i: all gives way to it but hazard, trouble, question and foot',
    (columns, rows) => {
      let gaveWay = 0
      walkExample((walk) => {
        const [whole, least] = [shot(walk, columns, rows), shot(walk, columns, rows, null, 99)]
        if (least.live.tooSmall || least.live.turn !== null) return
        for (const must of [...least.view.must, ...least.view.ask.filter((r) => r.tone !== 'faint')])
          expect(run(least.text)).toContain(must.text.trim())
        // On the lowest screen what stands on time has the one line; the number of the sheet stands in the margin too.
        expect(least.text).toMatch(
          columns > 40 ? /Sheet (\d+|-) of 20/ : /Sheet (\d+|-) of 20|lapses|STOP open|Wait/,
        )
        expect(least.text).toContain('Tab: make safe')
        for (const said of [1, 5, 9]) {
          const { live } = shot(walk, columns, rows, null, said)
          // One line more than there is room for: the words that work are never lost to an answer.
          expect(height(live)).toBeLessThanOrEqual(Math.max(rows - said, height(least.live)))
          if (height(live) < height(whole.live)) gaveWay++
        }
      })
      expect(gaveWay).toBeGreaterThan(10)
    },
  )
})

describe('what came on record with the last line', () => {
  it.each([0, 1, 2, 3, 4, 5, 8])(
    'stays in sight, all %i rows of it: a drawing gives way, and no word does',
    (taken) => {
      const walk = new Walk().toBore().keys('9.5033', '9.5034', '9.5021')
      const { live, text } = shot(walk, 80, 24, null, 0, undefined, taken)
      expect(height(live) + 1 + taken).toBeLessThanOrEqual(24)
      for (const word of ['Hazard: Both arms', 'Measure the diameter here', 'Swing it across', '2nd of 2'])
        expect(text).toContain(word)
      expect(text.includes('>#<')).toBe(taken < 8)
      // In its lowest form it has room all the same.
      expect(/HE │[─┴═xo#│]+ CE 9-3/.test(text)).toBe(taken === 8)
    },
  )

  it('takes no word and no rule of a prompt that has no drawing', () => {
    const walk = new Walk().toGate()
    expect(shot(walk, 80, 24, null, 0, undefined, 8).text).toBe(shot(walk, 80, 24).text)
  })
})

describe('the marks of the drawing', () => {
  it('are told under it where there is room, and never without it', () => {
    for (const rows of [18, 24, 26]) {
      for (const { view, text } of everyShot(80, rows)) {
        const isDrawn = view.drawings.some((form) => text.includes(form[2]?.text ?? 'nothing'))
        if (text.includes('# instrument, here')) expect(isDrawn).toBe(true)
      }
    }
    const told = everyShot(80, 40).map(({ view, text }) => [
      // Readings drawn out have no marks.
      view.drawings.length > 0 && view.legend.length > 0,
      text.includes('o to come'),
    ])
    for (const [isDrawn, isTold] of told) expect(isTold).toBe(isDrawn)
    expect(told.some(([isDrawn]) => isDrawn)).toBe(true)
  })
})
