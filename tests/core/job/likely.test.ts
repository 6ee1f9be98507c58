// What a figure that cannot be right may have been meant to be: shown where it fits, one or two of them, and never taken.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Likely, likely, likelySentence, swapped } from '../../../src/core/job/likely.ts'
import { parseEntry } from '../../../src/core/units/index.ts'

const INCH = { kind: 'length', decimalComma: false, places: 4, isFull: false } as const

interface Case {
  readonly unit?: string
  readonly least: number
  readonly most: number
  readonly decimalComma?: boolean
  readonly signed?: boolean
}

/** Window in `unit`. */
function meant(typed: string, { unit = 'in', least, most, decimalComma = false, signed = false }: Case) {
  const entry = parseEntry(typed, { kind: 'length', unit, decimalComma, signed })
  if (!entry.ok) throw new Error(entry.error.say)
  const per = { in: 0.0254, mm: 0.001, mil: 0.0000254, um: 1e-6 }[unit] ?? Number.NaN
  const fits = (si: number) => si >= least * per - 1e-9 && si <= most * per + 1e-9
  return {
    entry: entry.value,
    found: likely(entry.value, { kind: 'length', decimalComma, places: 4, isFull: false }, fits),
  }
}

const BORE = { least: 9.49, most: 9.56 }
const FEELER = { least: 0.001, most: 0.02 }

describe('what may have been meant', () => {
  it.each<[string, string, Case, [Likely['slip'], string][]]>([
    ['two figures changed round', '9.053', BORE, [['swapped', '9.503']]],
    ['two figures changed round, places kept', '5.930', { least: 9.5, most: 9.6 }, [['swapped', '9.530']]],
    ['figures changed round over the point', '5.903', BORE, [['swapped', '9.503']]],
    ['the point lost', '9503', BORE, [['point', '9.503']]],
    ['the point one place on', '95.03', BORE, [['point', '9.503']]],
    ['the point one place back', '.9503', BORE, [['point', '9.503']]],
    ['the unit spelt out is no slip of it', '241.38 in', BORE, []],
    ['mm where in is assumed', '241.38', BORE, [['unit', '241.38 mm']]],
    ['in where mm is assumed', '15.002', { unit: 'mm', least: 380, most: 382 }, [['unit', '15.002 in']]],
    [
      'a gap in mm where in is assumed',
      '0.1',
      FEELER,
      [
        ['point', '0.01'],
        ['unit', '0.1 mm'],
      ],
    ],
    ['a gap in mils where in is assumed', '4', FEELER, [['unit', '4 mil']]],
    ['um where mm is assumed', '35', { unit: 'mm', least: 0.03, most: 0.04 }, [['unit', '35 um']]],
    ['in where mils are assumed', '0.012', { unit: 'mil', least: 5, most: 40 }, [['unit', '0.012 in']]],
    ['the minus lost', '0.005', { least: -0.009, most: -0.001, signed: true }, [['sign', '-0.005']]],
    ['a minus too many', '-0.005', { least: 0.001, most: 0.009, signed: true }, [['sign', '0.005']]],
    ['a comma where the site writes one', '9,053', { ...BORE, decimalComma: true }, [['swapped', '9,503']]],
    ['too many would fit, so none tells anything', '123.4', { least: 0, most: 100 }, []],
    ['nothing would fit', '8.1111', BORE, []],
    ['figures all alike changed round are the same figure', '8.888', { least: 8.88, most: 8.89 }, []],
  ])('%s: %s', (_what, typed, window, expected) => {
    const { found } = meant(typed, window)
    expect(found.map(({ slip, figure }) => [slip, figure]).sort()).toEqual([...expected].sort())
  })

  it('is said in a sentence that asks for the figure in full', () => {
    const one = meant('9.053', BORE)
    expect(likelySentence(one.entry, one.found)).toBe(
      '9.503 would fit; 9.053 has two figures changed round. If that is what you read: 2, then 9.503 in full.',
    )
    const two = meant('0.1', FEELER)
    expect(likelySentence(two.entry, two.found)).toBe(
      '0.1 mm would fit; 0.1 was keyed without that unit. So would 0.01; 0.1 has its point lost or in another place. If one of them is what you read: 2, then that one in full.',
    )
    const none = meant('8.1111', BORE)
    expect(likelySentence(none.entry, none.found)).toBeNull()
  })

  it('is written to the places of the gauge where it would be asked for in full else, and never with more', () => {
    const keyed = (typed: string, kind: 'length' | 'temperature', unit: string) => {
      const entry = parseEntry(typed, { kind, unit })
      if (!entry.ok) throw new Error('no entry')
      return entry.value
    }
    const bore = likely(
      keyed('9.052', 'length', 'in'),
      { ...INCH, isFull: true },
      (si) => si > 0.241 && si < 0.2415,
    )
    expect(bore).toMatchObject([{ slip: 'swapped', figure: '9.5020' }])
    const warm = { kind: 'temperature', decimalComma: false, places: 1, isFull: false } as const
    expect(likely(keyed('70.4', 'temperature', 'degF'), warm, (si) => si > 250 && si < 262)).toEqual([])
  })

  it('is not told of other quantities in other units of length', () => {
    const entry = parseEntry('241.38', { kind: 'length', unit: 'in' })
    if (!entry.ok) throw new Error('no entry')
    expect(likely(entry.value, { ...INCH, kind: 'mass' }, (si) => si > 0.241 && si < 0.242)).toEqual([])
  })
})

const digitsOf = (figures: string) => figures.replace(/[^\d]/g, '')
const bare = (figures: string) => digitsOf(figures).replace(/^0+|0+$/g, '')

/** Told anew and by other means: how the figure differs from what was keyed. */
function isSlip(typed: string, { slip, figure }: Likely): boolean {
  const [number = '', unit] = figure.split(' ')
  switch (slip) {
    case 'swapped': {
      const differ = [...typed].flatMap((sign, at) => (sign === number[at] ? [] : [at]))
      const [a = -1, b = -1] = differ
      const isPair = differ.length === 2 && digitsOf(typed.slice(a + 1, b)) === ''
      return typed.length === number.length && isPair && typed[a] === number[b] && typed[b] === number[a]
    }
    case 'point':
      return bare(typed) === bare(number) && Number(typed) !== Number(number)
    case 'unit':
      return number === typed && unit !== undefined
    case 'sign':
      return Number(number) === -Number(typed)
  }
}

describe('whatever is keyed and whatever the window', () => {
  const typed = fc.tuple(fc.nat(99999), fc.nat(4)).map(([n, places]) => (n / 10 ** places).toFixed(places))
  /** Around what a slip would make of it, or anywhere; the rest of the width of it. */
  const window = fc.tuple(
    fc.constantFrom(0.001, 1 / 25.4, 0.1, 0.9, 1.1, 10, 25.4, 1000, -1),
    fc.double({ min: 0, max: 50, noNaN: true }),
  )

  it('what is shown lies in the window, differs by its slip, and is one or two', () => {
    let shown = 0
    fc.assert(
      fc.property(typed, window, fc.constantFrom('in', 'mm', 'mil', 'um'), (keyed, [times, width], unit) => {
        const least = Number(keyed) * times - width / 2
        const { entry, found } = meant(keyed, { unit, least, most: least + width })
        const per = { in: 0.0254, mm: 0.001, mil: 0.0000254, um: 1e-6 }[unit] ?? Number.NaN
        expect(found.length).toBeLessThanOrEqual(2)
        for (const one of found) {
          shown++
          expect(one.si).toBeGreaterThanOrEqual(least * per - 1.1e-9)
          expect(one.si).toBeLessThanOrEqual((least + width) * per + 1.1e-9)
          expect(one.si).not.toBe(entry.si)
          expect([keyed, one, isSlip(keyed, one)]).toEqual([keyed, one, true])
          // What is shown can be keyed in full, and is then what was shown.
          const again = parseEntry(one.figure, { kind: 'length', unit, signed: true })
          expect(again.ok && again.value.si).toBe(one.si)
        }
        expect(entry.typed).toBe(keyed)
      }),
      { numRuns: 2000 },
    )
    expect(shown).toBeGreaterThan(300)
  })

  it('two figures changed round twice are what they were', () => {
    fc.assert(
      fc.property(typed, fc.nat(12), (keyed, n) => {
        expect(swapped(swapped(keyed, n), n)).toBe(keyed)
      }),
    )
    expect(swapped('9.053', 1)).toBe('9.503')
    expect(swapped('9.053', 0)).toBe('0.953')
    expect(swapped('9.053', 3)).toBe('9.053')
  })
})
