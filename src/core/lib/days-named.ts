// Days as people write them in a sentence: `14 September 2026`, `end of March 2027`, `14.09.2026`, `2026-09-14`. One that can only be one
// day is that day; of any other is told what it leaves open. Nothing is guessed: neither a year nor which of two figures is the month.

export interface DayNamed {
  /** As it stands in the words. */
  readonly text: string
  /** YYYY-MM-DD; null where it can be no day or more than one. */
  readonly day: string | null
  /** What it leaves open, put after `text`; null beside a day. */
  readonly doubt: string | null
  /** Where it begins in the words. */
  readonly at: number
}

const MONTH =
  '(jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)'
const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec']
const NAMES = [
  ...['January', 'February', 'March', 'April', 'May', 'June', 'July'],
  ...['August', 'September', 'October', 'November', 'December'],
]
/** Neither side goes on in figures or their signs: `10-14 September 2026` is a span, and `9.50.33` no day. */
const BEGIN = '(?<![\\p{L}\\d]|\\d[-./,]|[-/])'
const END = '(?![\\p{L}\\d]|[-./,]\\d)'
const PART = '[\\s./-]{0,3}'
const NTH = '(\\d{1,2})(?:st|nd|rd|th)?'
/** Hours are no year: `14 September, 4000 h`. */
const YEAR = '(\\d{4}|\\d{2})(?!\\s*(?:h|hrs?|hours?)(?!\\p{L}))'

type Reading = Pick<DayNamed, 'day' | 'doubt'>

interface Form {
  readonly pattern: RegExp
  readonly read: (parts: readonly string[]) => Reading
}

const form = (pattern: string, read: Form['read'], flags = 'giu'): Form => ({
  pattern: new RegExp(`${BEGIN}${pattern}${END}`, flags),
  read,
})

const open = (doubt: string): Reading => ({ day: null, doubt })
const NO_YEAR = open('without its year')

/** The first that fits takes its words; the others do not see them any more. */
const FORMS: readonly Form[] = [
  form('(\\d{4})([-/.])(\\d{1,2})\\2(\\d{1,2})', ([y, , m, d]) => dayOf(y, Number(m), Number(d))),
  form('(\\d{1,2})([-/.])(\\d{1,2})\\2(\\d{4}|\\d{2})', ([a, , b, y]) => ofFigures(Number(a), Number(b), y)),
  form(`${NTH}${PART}(?:of )?${MONTH}\\.?,?${PART}${YEAR}`, ([d, m, y]) => dayOf(y, monthOf(m), Number(d))),
  form(`${MONTH}\\.?${PART}${NTH},?\\s+${YEAR}`, ([m, d, y]) => dayOf(y, monthOf(m), Number(d))),
  form(`(?:the )?end of ${MONTH}\\.?,?\\s+(\\d{4})`, ([m, y]) => lastOf(y, monthOf(m))),
  form(`(?:the )?end of ${MONTH}`, () => NO_YEAR),
  form(`${MONTH}\\.?,?\\s+\\d{4}(?!\\s*(?:h|hrs?|hours?)(?!\\p{L}))`, () => open('without its day')),
  form(`${NTH} (?:of )?${MONTH}`, () => NO_YEAR),
  form(`${MONTH} ${NTH}`, () => NO_YEAR),
  // Small, `may` and `march` are words of their own.
  form(
    '(?:in|by|until|before|mid) (?:(?:mid|early|late) )?(January|February|March|April|May|June|July|August|September|October|November|December)',
    () => open('without its day and year'),
    'gu',
  ),
  form(
    '(?:in )?(?:\\d+|an?|one|two|three|six|half an?) (?:day|week|month|quarter|year)s?(?: from now)?',
    () => open('not a day yet'),
  ),
  form('(?:next|this) (?:week|month|quarter|year|spring|summer|autumn|winter)', () => open('not a day yet')),
  form('(?:the )?end of (?:the |this |next )?(?:week|month|quarter|year)', () => open('not a day yet')),
  form('(?:by|on|until|before) \\d{1,2}/\\d{1,2}', () => NO_YEAR),
]

/** In the order of the words. */
export function daysNamed(words: string): DayNamed[] {
  let rest = words
  const found: DayNamed[] = []
  for (const { pattern, read } of FORMS) {
    for (const match of rest.matchAll(pattern)) {
      found.push({ at: match.index, text: match[0], ...read(match.slice(1)) })
      rest = `${rest.slice(0, match.index)}${'|'.repeat(match[0].length)}${rest.slice(match.index + match[0].length)}`
    }
  }
  return found.sort((a, b) => a.at - b.at)
}

function monthOf(name: string | undefined): number {
  return MONTHS.indexOf((name ?? '').slice(0, 3).toLowerCase()) + 1
}

function daysIn(year: number, month: number): number {
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0
  return [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1] ?? 0
}

function dayOf(year: string | undefined, month: number, day: number): Reading {
  if (year?.length !== 4) return open('without its year in four figures')
  // Hours or a size keyed behind a month. The bounds are common practice, no source: no machine's papers go further.
  if (Number(year) < 1900 || Number(year) > 2199) return open('of a year that cannot be meant')
  if (!(day >= 1 && day <= daysIn(Number(year), month))) return open('no day of the calendar')
  return { day: `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`, doubt: null }
}

function lastOf(year: string | undefined, month: number): Reading {
  return dayOf(year, month, daysIn(Number(year), month))
}

/** Which of two figures is the month is told only by one that can be none, or by both being the same. */
function ofFigures(a: number, b: number, year: string | undefined): Reading {
  if (year?.length !== 4) return open('without its year in four figures')
  if (a > 12) return dayOf(year, b, a)
  if (b > 12 || a === b) return dayOf(year, a, b)
  if (!(a >= 1 && b >= 1)) return open('no day of the calendar')
  return open(`${a} ${NAMES[b - 1]} or ${b} ${NAMES[a - 1]}`)
}
