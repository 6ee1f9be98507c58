// The parts that are drawn from the side with stations along them: their landmarks, and how each is put on paper.
import type { AlongLayout, Landmark } from './along-layout.ts'
import type { Canvas } from './canvas.ts'

/**
 * Where the instrument is drawn: from wall to wall, on the upper wall, on the lower one, or in the middle row. What
 * spans a part is drawn across it; anything else touches it in the one place the part has for that.
 */
export type Reach = 'across' | 'top' | 'foot' | 'middle'

export interface AlongPart {
  readonly landmarks: readonly Landmark[]
  /** What is drawn, in words, the longest first; written where the picture has room. */
  readonly captions: readonly string[]
  /** Signs at the two ends of the middle row. */
  readonly ends: readonly [string, string]
  /** Columns right of the part for the rod it sits on. */
  readonly tail?: number
  readonly touched: Exclude<Reach, 'across'>
  /** Whether an instrument may be set across it at all. */
  readonly spans: boolean
  /** Draws rows 1 to 3 of the picture: upper wall, middle, lower wall. */
  readonly paint: (paper: Canvas, layout: AlongLayout) => void
}

const WALLS = [1, 3] as const
/** Columns of rod drawn behind a piston. */
const ROD = 4

const mark = (id: string, at: number, same: 'left' | 'right'): Landmark => ({ id, at, same })
const ring = (id: string, at: number): Landmark => ({ id, at, same: 'left', extra: true })

function columnOf({ landmarks, first }: AlongLayout, id: string): number {
  return landmarks.get(id) ?? first
}

/** A closed outline between two landmarks. */
function outline(paper: Canvas, layout: AlongLayout): { readonly left: number; readonly right: number } {
  const left = columnOf(layout, 'left')
  const right = columnOf(layout, 'right')
  for (const row of WALLS) paper.run(row, left, right, '─')
  paper.put(1, left, '┌')
  paper.put(2, left, '│')
  paper.put(3, left, '└')
  paper.put(1, right, '┐')
  paper.put(2, right, '│')
  paper.put(3, right, '┘')
  return { left, right }
}

function rings(paper: Canvas, layout: AlongLayout): void {
  for (const [id, column] of layout.landmarks) {
    if (!id.startsWith('ring')) continue
    paper.put(1, column, '╥')
    paper.put(3, column, '╨')
  }
}

/** The rod goes on from the crank-end face of the piston. */
function onRod(paper: Canvas, { last }: AlongLayout, right: number): void {
  paper.put(2, right, '╞')
  paper.run(2, right + 1, last + ROD, '═')
}

/** Piston thread, fit, shoulder, the length the packing runs on, crosshead thread. */
const rod: AlongPart = {
  landmarks: [
    mark('thread', 0.04, 'left'),
    mark('left', 0.1, 'left'),
    mark('right', 0.96, 'right'),
    mark('far_thread', 0.98, 'right'),
  ],
  captions: ['rod, its piston end left', 'rod'],
  ends: ['HE', 'CE'],
  touched: 'top',
  spans: true,
  paint: (paper, layout) => {
    const { left, right } = outline(paper, layout)
    paper.run(2, layout.first, left - 1, '═')
    paper.run(2, layout.first, columnOf(layout, 'thread'), '┼')
    paper.run(2, right + 1, layout.last, '═')
    paper.run(2, columnOf(layout, 'far_thread'), layout.last, '┼')
    paper.put(2, left, '╡')
    paper.put(2, right, '╞')
  },
}

/** Rings are a sign for rings, not a count of them. A station at 0 or 1 is on the face itself. */
const piston: AlongPart = {
  landmarks: [
    mark('left', 0, 'left'),
    ring('ring 1', 0.3),
    ring('ring 2', 0.5),
    ring('ring 3', 0.7),
    mark('right', 1, 'right'),
  ],
  captions: ['piston'],
  ends: ['HE', 'CE'],
  tail: ROD,
  touched: 'top',
  spans: true,
  paint: (paper, layout) => {
    const { right } = outline(paper, layout)
    onRod(paper, layout, right)
    rings(paper, layout)
  },
}

/** Bands at both ends, the rings between; the piston lies on the foot of its riders. */
const riders: AlongPart = {
  landmarks: [
    mark('left', 0, 'left'),
    mark('from 1', 0.03, 'left'),
    mark('to 1', 0.2, 'right'),
    ring('ring 1', 0.4),
    ring('ring 2', 0.6),
    mark('from 2', 0.8, 'left'),
    mark('to 2', 0.97, 'right'),
    mark('right', 1, 'right'),
  ],
  captions: ['piston on its riders', 'riders'],
  ends: ['HE', 'CE'],
  tail: ROD,
  touched: 'foot',
  spans: true,
  paint: (paper, layout) => {
    const { right } = outline(paper, layout)
    onRod(paper, layout, right)
    rings(paper, layout)
    for (const n of [1, 2])
      for (const row of WALLS) paper.run(row, columnOf(layout, `from ${n}`), columnOf(layout, `to ${n}`), '═')
  },
}

const liner: AlongPart = {
  landmarks: [mark('left', 0, 'right'), mark('right', 1, 'left')],
  captions: ['liner, from outside', 'liner'],
  ends: ['HE', 'CE'],
  touched: 'top',
  spans: true,
  paint: outline,
}

/** Open at both ends: one looks into it, as into the bore. */
const seat: AlongPart = {
  ...liner,
  captions: ['seat of the liner, inside', 'seat, inside', 'seat'],
  touched: 'foot',
  paint: (paper, layout) => {
    const { left, right } = outline(paper, layout)
    for (const [row, l, r] of [
      [1, '┘', '└'],
      [2, ' ', ' '],
      [3, '┐', '┌'],
    ] as const) {
      paper.put(row, left, l)
      paper.put(row, right, r)
    }
  },
}

const cylinder: AlongPart = {
  landmarks: [
    mark('left', 0, 'right'),
    mark('flange 1', 0.08, 'left'),
    mark('flange 2', 0.92, 'right'),
    mark('right', 1, 'left'),
  ],
  captions: ['cylinder, from outside', 'cylinder'],
  ends: ['HE', 'CE'],
  touched: 'top',
  spans: false,
  paint: (paper, layout) => {
    outline(paper, layout)
    for (const n of [1, 2]) {
      const column = columnOf(layout, `flange ${n}`)
      paper.put(1, column, '┬')
      paper.put(2, column, '│')
      paper.put(3, column, '┴')
    }
  },
}

/** The way of the gas, in at the left: suction pipe, cylinder with its jacket, discharge pipe. */
const gasWay: AlongPart = {
  landmarks: [mark('left', 0.18, 'left'), mark('right', 0.82, 'right')],
  captions: ['cylinder, jacket'],
  ends: ['in', 'out'],
  touched: 'middle',
  spans: false,
  paint: (paper, layout) => {
    const { left, right } = outline(paper, layout)
    paper.run(2, layout.first, left - 1, '═')
    paper.put(2, left, '╡')
    paper.put(2, right, '╞')
    paper.run(2, right + 1, layout.last, '═')
  },
}

export const ALONG_PARTS = { rod, piston, riders, liner, seat, cylinder, gas_way: gasWay } as const
