// A picture told in words says what the picture shows: where, how the instrument lies, what was read beside it and what is to come.
import { expect, it } from 'vitest'
import { FIGURE_KINDS } from '../../../src/core/drawing/figures.ts'
import { DRAWING_KINDS } from '../../../src/core/drawing/kinds.ts'
import { tellFigure, tellPlace, tellProfile } from '../../../src/core/drawing/told.ts'

const stations = [
  { id: 'ce', label: 'CE', words: 'CRANK END of ring travel', at: 1 },
  { id: 'he', label: 'HE', words: 'HEAD END of ring travel', at: 0, value: '9.5033' },
  { id: 'mid', label: 'CENTRE', words: 'CENTRE of ring travel', at: 0.5 },
]

it('a place is told in its order from the head end, with the clock of the line across', () => {
  const place = { kind: 'bore' as const, stations, here: 'mid', across: true }
  const axis = { id: 'vertical', label: 'TOP TO BOTTOM', from: 12, to: 6 }
  expect(tellPlace({ ...place, axis })).toEqual({
    where:
      "Where: CENTRE of ring travel, 2 of 3 along it, across the bore, from 12 to 6 o'clock, seen from the head end.",
    beside: ['Measured: HEAD END of ring travel 9.5033.', 'To come: CRANK END of ring travel.'],
  })
})

it('one place alone is told too, with what the instrument is set to', () => {
  const wall = [{ id: 'middle', label: 'half-way in', at: 0.5 }]
  expect(tellPlace({ kind: 'bore_wall', stations: wall, here: 'middle', across: false })).toEqual({
    where: 'Where: half-way in, on the wall of the bore.',
    beside: [],
  })
})

it.each(DRAWING_KINDS)('%s has words, and none of them is a sign', (kind) => {
  const { where } = tellPlace({ kind, stations: stations.slice(0, 1), here: 'ce', across: false })
  expect(where).toMatch(/^Where: CRANK END of ring travel, [a-z][A-Za-z ,-]+\.$/)
})

it('a picture where nothing is read has words as well', () => {
  for (const kind of FIGURE_KINDS) expect(tellFigure(kind)).toMatch(/^Picture: [\w ,;-]+\.$/)
})

it('the wear along the bore is every figure by its place, none left out; nothing before two places have one', () => {
  const profile = {
    stations,
    rows: [
      { axisLabel: 'TOP TO BOTTOM', values: [undefined, 9.50335, 9.5069] },
      { axisLabel: 'SIDE TO SIDE', values: [undefined, 9.5021, undefined] },
    ],
    unit: 'in',
    decimals: 4,
  }
  expect(tellProfile(profile)).toEqual([
    'Along the bore, in inches:',
    expect.stringMatching(/^TOP TO BOTTOM: HE 9\.503[34], CENTRE 9\.5069, CE to come\.$/),
    'SIDE TO SIDE: HE 9.5021, CENTRE to come, CE to come.',
  ])
  const done = {
    axisLabel: 'SIDE TO SIDE',
    values: [undefined, 9.5021, undefined],
    instead: [undefined, undefined, 'no figure'],
  }
  expect(tellProfile({ ...profile, rows: [...profile.rows.slice(0, 1), done] })[2]).toBe(
    'SIDE TO SIDE: HE 9.5021, CENTRE no figure, CE to come.',
  )
  const first = { axisLabel: 'TOP TO BOTTOM', values: [undefined, 9.5, undefined] }
  expect(tellProfile({ ...profile, rows: [first] })).toEqual([])
})
