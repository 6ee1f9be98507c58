// The check number of a log as it is copied by hand: in groups, none of them parted on any screen that holds one.
import { expect, it } from 'vitest'
import { headGroups } from '../../src/app/head.ts'

const HEAD = 'e114a85b275243f812964a55a1cd95f2826608446874f7ba40ccac646c47bbcf'

it.each([
  [80, 2],
  [37, 2],
  [36, 3],
  [31, 3],
  [20, 4],
  [9, 8],
])('in %i columns it stands on %i lines, every group whole', (room, lines) => {
  const told = headGroups(HEAD, room)
  expect(told).toHaveLength(lines)
  expect(told.flatMap((line) => line.trim().split(' ')).every((group) => group.length === 8)).toBe(true)
  expect(told.join('').replaceAll(' ', '')).toBe(HEAD)
  if (room > 9) for (const line of told) expect(line.length).toBeLessThanOrEqual(room)
})

it('without a width is in two lines', () => {
  expect(headGroups(HEAD)).toHaveLength(2)
})
