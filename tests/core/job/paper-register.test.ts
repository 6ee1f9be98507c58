// The register of a sheet that is keyed in: what was put in is in the machine for whoever asks, whatever the sheet says of its coming out.
import { describe, expect, it } from 'vitest'
import { otherStanding } from '../../../src/core/job/elsewhere-words.ts'
import { openThings } from '../../../src/core/job/register.ts'
import { standingOf, watch, watchFrom } from '../../../src/core/job/watch.ts'
import type { Walk } from '../../helpers/example.ts'
import { fill, fromDisk, sheetJob } from '../../helpers/filled-sheet.ts'
import { reviewed } from '../../helpers/reviewed.ts'
import { smallDefs, tell } from '../../helpers/small-job.ts'

const defs = smallDefs([
  tell('brief'),
  tell('blocked', {
    places: [
      { id: 'pin', what: 'locking pin' },
      { id: 'tag', what: 'tag on the panel' },
    ],
  }),
])

const SAYS: Readonly<Record<string, string>> = {
  day: '2026-03-14',
  ended: '2026-03-14 11:30',
  people: 'RO ML',
  'brief done': '06:30 RO',
  'blocked done': '06:40 RO',
  'register.pin': '06:41 RO flywheel, P-7',
  'register.pin.out': '10:00 RO',
  'register.pin.and': '- ML',
  'register.1': '07:00 ML sling on the head',
}
const sheetOf = (change: Readonly<Record<string, string>> = {}, until?: string) =>
  fill(sheetJob(defs).keys('RO'), { ...SAYS, ...change }, until)
const inMachine = ({ state }: Walk) => openThings(state).map(({ what }) => what)
const told = (walk: Walk) =>
  reviewed(walk).exceptions.map(({ what, sentences }) => [what, ...sentences].join(' '))

function seenOf(walk: Walk) {
  const [opened, ...rest] = walk.entries
  if (opened?.type !== 'job.opened') throw new Error('not opened')
  return standingOf(
    defs,
    rest.reduce((watched, entry) => watch(defs, watched, entry), watchFrom(opened)),
  )
}

const whole = sheetOf()

describe('the register of a sheet', () => {
  it('has in the machine what a step puts in, also where its line is blank, and what was written besides', () => {
    expect(whole.prompt).toEqual({ kind: 'sheet-sign', as: 'keyed' })
    expect(inMachine(whole)).toEqual([
      'locking pin (step 2), flywheel, P-7',
      'tag on the panel (step 2), its line BLANK on the sheet',
      'sling on the head',
    ])
    expect(fromDisk(whole.entries).ok).toBe(true)
  })

  it('takes nothing out by initials: the review says what stands there', () => {
    const all = told(whole).join('\n')
    expect(all).toMatch(
      /locking pin .*NOT ACCOUNTED FOR.*Out by the sheet: 2026-03-14 10:00 RO, and ML\. Initials/,
    )
    expect(all).toMatch(/tag on the panel .*The sheet does not say that it came out/)
  })

  it('is told to other jobs: what stays in, and that something was taken off', () => {
    const seen = seenOf(whole)
    expect(seen.placed).toHaveLength(3)
    expect(seen.doings).toMatchObject([
      { what: 'removed', told: false },
      { what: 'removed', told: false },
    ])
    const other = { ...seen, ...ELSE, unread: null }
    expect(otherStanding(whole.state, other).join('\n')).toMatch(/IN THE MACHINE by it: sling on the head/)
    expect(seenOf(sheetOf({}, 'register.pin')).placed).toBeUndefined()
  })

  it('keeps one thing of a line that is put right', () => {
    const walk = sheetOf()
    const of = walk.entries.find((e) => e.type === 'paper.row' && e.row === 'register.1')?.seq ?? -1
    expect(walk.bring({ do: 'sheet-correct', of, typed: '07:00 ML sling, S-4', why: 'slip' })).toBeNull()
    expect(inMachine(walk)).toHaveLength(3)
    expect(inMachine(walk)).toContain('sling, S-4')
    const pin = walk.entries.find((e) => e.type === 'paper.row' && e.row === 'register.pin')?.seq ?? -1
    expect(walk.bring({ do: 'sheet-correct', of: pin, typed: '-', why: 'slip' })).toBeNull()
    expect(inMachine(walk)).toContain('locking pin (step 2), its line BLANK on the sheet')
  })
})

const ELSE = { job: 'other', record: 'EXAMPLE', tag: 'TC-401-1', told: true, upTo: 0, head: '' } as const
