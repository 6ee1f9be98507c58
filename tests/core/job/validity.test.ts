// The end of what a lead lets pass: a day in words is the one day it can be, and nothing else is a day.
import { describe, expect, it } from 'vitest'
import { validityFrom } from '../../../src/core/job/validity.ts'

const AT = '2026-03-14T08:00:00+00:00'

describe('an end', () => {
  it.each([
    ['2026-09-14', { until: '2026-09-14' }],
    ['14 September 2026', { until: '2026-09-14' }],
    ['14.09.2026', { until: '2026-09-14' }],
    ['end of March 2027', { until: '2027-03-31' }],
    ['4000 h', { hours: 4000 }],
  ])('%j is taken', (typed, value) => {
    expect(validityFrom(typed, AT)).toEqual({ ok: true, value })
  })

  it.each([
    ['3/4/2026', /can be 3 April or 4 March\. Key the day as YYYY-MM-DD/],
    ['14 September', /is without its year\. Key the day/],
    ['14 September 2025', /is not after today/],
    ['by 14 September 2026 or so', /^Key a day as YYYY-MM-DD/],
    ['1 May 2026 14 September 2026', /^Key a day/],
    ['soon', /^Key a day/],
  ])('%j is none', (typed, why) => {
    const result = validityFrom(typed, AT)
    expect(result.ok ? '' : result.error.say).toMatch(why)
  })
})
