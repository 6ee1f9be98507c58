// A day in words is the one day it can be, or what it leaves open is told.
import { describe, expect, it } from 'vitest'
import { daysNamed } from '../../../src/core/lib/days-named.ts'

describe('a day that can only be one', () => {
  it.each([
    ['2026-09-14', '2026-09-14'],
    ['14 September 2026', '2026-09-14'],
    ['14 Sep 2026', '2026-09-14'],
    ['14 Sept. 2026', '2026-09-14'],
    ['the 14th of September, 2026', '2026-09-14'],
    ['September 14, 2026', '2026-09-14'],
    ['Sep 14th 2026', '2026-09-14'],
    ['14-Sep-2026', '2026-09-14'],
    ['14. september 2026', '2026-09-14'],
    ['14.09.2026', '2026-09-14'],
    ['14/9/2026', '2026-09-14'],
    ['9/14/2026', '2026-09-14'],
    ['3/3/2027', '2027-03-03'],
    ['2026/9/4', '2026-09-04'],
    ['end of March 2027', '2027-03-31'],
    ['the end of February 2028', '2028-02-29'],
    ['29 February 2028', '2028-02-29'],
    ['read again by 14 September 2026.', '2026-09-14'],
  ])('%j', (words, day) => {
    expect(daysNamed(words).map((one) => one.day)).toEqual([day])
  })

  it('stands in its words as it was written, with the others in their order', () => {
    expect(daysNamed('seen on 1 May 2026, again by 2026-09-14')).toEqual([
      { text: '1 May 2026', day: '2026-05-01', doubt: null, at: 8 },
      { text: '2026-09-14', day: '2026-09-14', doubt: null, at: 29 },
    ])
  })
})

describe('a day that leaves something open', () => {
  it.each([
    ['3/4/2026', '3 April or 4 March'],
    ['03.04.2026', '3 April or 4 March'],
    ['14/9/26', 'without its year in four figures'],
    ['14 Sep 26', 'without its year in four figures'],
    ['14 September', 'without its year'],
    ['September 14', 'without its year'],
    ['end of March', 'without its year'],
    ['by 14/9', 'without its year'],
    ['September 2026', 'without its day'],
    ['10-14 September 2026', 'without its day'],
    ['in March', 'without its day and year'],
    ['31 September 2026', 'no day of the calendar'],
    ['29 February 2027', 'no day of the calendar'],
    ['32/13/2026', 'no day of the calendar'],
    ['0/4/2026', 'no day of the calendar'],
    ['in 6 months', 'not a day yet'],
    ['half a year', 'not a day yet'],
    ['next spring', 'not a day yet'],
    ['14 September, 4000 h', 'without its year'],
    ['14 September 4000', 'of a year that cannot be meant'],
    ['the end of the year', 'not a day yet'],
  ])('%j: %s', (words, doubt) => {
    const [only, ...more] = daysNamed(words)
    expect(more).toEqual([])
    expect(only).toMatchObject({ day: null, doubt })
  })
})

describe('no day', () => {
  it.each([
    'inside its limits',
    'it may be read again',
    'march on',
    'at 4000 h',
    'M-3 read 9.5033 in',
    'taper 0.0041 of 0.0055',
    'sheet 14 of 18',
    'TC-401-1',
    'decided',
    '3/4 of it',
    'the marks at 12 o clock',
  ])('%j', (words) => {
    expect(daysNamed(words)).toEqual([])
  })
})
