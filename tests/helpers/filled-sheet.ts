// A sheet of the bore inspection as somebody filled it in by hand, and a job that it is keyed into. All of it invented.
import type { Definitions } from '../../src/core/job/definitions.ts'
import type { Entry } from '../../src/core/job/entries.ts'
import { readEntries } from '../../src/core/job/entry-schema.ts'
import { checkMark } from '../../src/core/job/paper.ts'
import { readStamp } from '../../src/core/lib/instant.ts'
import { fileCopies, Walk } from './example.ts'

/** What the sheet of these files has at its foot. */
export const MARKS = `bore_inspection, edition 8, ${checkMark(fileCopies())}`

/** In the afternoon of the day the sheet is of. */
export function sheetJob(defs?: Definitions): Walk {
  const walk = new Walk(defs, 'EXAMPLE', { paper: true })
  walk.now = readStamp('2026-03-14T16:20:00.000+00:00') ?? walk.now
  return walk
}

export const FRONT_LINES = [
  MARKS,
  'WO-17',
  '2026-03-14',
  '06:20',
  '2026-03-14 11:30',
  '06:30 RO TC-401-1',
  'RO ML',
  'G-7',
  'T-2',
  'M-3',
]

/** A gas test is stale after 30 min here. */
function staleFrom(gas: string): string {
  const [hour = 0, minute = 0] = gas.split(':').map(Number)
  const at = hour * 60 + minute + 30
  return `${String(Math.floor(at / 60)).padStart(2, '0')}:${String(at % 60).padStart(2, '0')}`
}

/** The hold point as it was written; `gas` at that time, and no other copy of its page. */
export function permitLines(gas = '06:52'): string[] {
  return [
    ...[1, 2, 3, 4, 5, 6].map((n) => `06:3${n} RO L-10${n}`),
    ...['NO START', 'NO FLOW', 'BLOCKED BOTH WAYS', 'METER ANSWERED'].map((words) => `06:40 RO ${words}`),
    ...['20.9', '0', '0', '20.8', '0', '0'].map((figure) => `${gas} RO ${figure} G-7`),
    '06:53 ML ML',
    `06:53 RO ${staleFrom(gas)}`,
    // Nothing fell, and there is no other copy.
    '-',
    '-',
  ]
}

/** A step that reads one place: its own instrument box blank, the line, the figures. */
export const one = (line: string, ...figures: string[]) => ['-', line, ...figures]

/** The bore itself, each figure as the sheet has it. */
export const BORE = [
  'M-3',
  ...['06:55 RO', '9.5033', '9.5034', '06:57 RO', '9.5021', '9.5020', '06:59 RO', '9.5068', '9.5069'],
  ...['07:01 RO', '9.5034', '9.5035', '07:03 RO', '9.5027', '9.5027', '07:05 RO', '9.5018', '9.5019'],
]

export const BEFORE_BORE = [
  '06:53 RO',
  ...one('06:53 RO', '71.2'),
  ...one('06:54 RO', '70.4'),
  ...one('06:54 RO', '9.5000'),
]

export const AFTER_BORE = [
  '07:06 RO 1',
  ...['-', '07:07 RO', '9.5008', '9.5008', '07:08 RO', '9.5007', '9.5007'],
  ...one('07:09 RO', '9.7502'),
  ...['07:10 RO 1', '07:10 RO 1', '07:11 RO 1'],
  ...one('07:12 RO', '71.6'),
  ...one('07:13 RO', '70.8'),
  ...one('07:14 RO', '9.5001'),
]

/** What was decided by hand, the last step, the end. */
export const END_LINES = [
  '08:42 KH accept',
  '07:20 RO',
  // It goes back, and the sheet says so.
  '2',
  ...['-', '-', '-', '-', '08:50 RO R. O.', '08:55 KH K. H.'],
]

/** Decided by a lead at the keyboard, then both signatures. */
export const SIGN_LINES = ['1', 'KH', 'Inside its limits, read again at the next opening.', 'RO', 'KH']

/** The whole sheet up to what was worked out by hand, with other lines where a test wants them. */
export function toJudge(
  more: { permit?: string[]; before?: string[]; bore?: string[]; after?: string[] } = {},
): string[] {
  const { permit = permitLines(), before = BEFORE_BORE, bore = BORE, after = AFTER_BORE } = more
  return ['RO', ...FRONT_LINES, '06:31 RO', ...permit, ...before, ...bore, ...after, '08:40 KH MONITOR']
}

/** The same lines an hour later by the sheet. */
export function anHourLater(lines: readonly string[]): string[] {
  return lines.map((line) => line.replace(/\b0(\d):/g, (_all, hour: string) => `0${Number(hour) + 1}:`))
}

export const WHOLE = [...toJudge(), ...END_LINES, ...SIGN_LINES]

/** Goes down the sheet: each box as `says` has it by step and row, `-` where it has nothing. Ends at `until`, a box or what one takes, or behind the last. */
export function fill(walk: Walk, says: Readonly<Record<string, string>>, until?: string): Walk {
  for (let n = 0; n < 3000 && walk.prompt.kind === 'sheet'; n++) {
    const { placed, row } = walk.prompt.box
    const key = `${placed?.id ?? ''} ${row}`.trim()
    if (key === until || walk.prompt.box.takes === until) return walk
    const before = walk.entries.length
    walk.keys(says[key] ?? '-')
    // Another copy of a page is keyed where the first is, so times go back behind it; and small jobs have no printed sheet, so what they
    // have at its foot stands so.
    if (walk.talk.ask?.kind === 'sheet-sure') walk.keys('2')
    if (walk.entries.length === before) throw new Error(`${key}: ${walk.said.join(' ')}`)
  }
  return walk
}

/** The log as it is read from disk. */
export function fromDisk(entries: readonly Entry[]) {
  return readEntries(
    entries.map((e) => ({ prev: '', hash: '', ...(JSON.parse(JSON.stringify(e)) as object) })),
  )
}
