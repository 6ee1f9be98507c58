// A gas test that ran out while the program was not awake: the log has when that was noted, and what is told has when it was.
import { describe, expect, it } from 'vitest'
import { asOpened } from '../../../src/core/job/editions.ts'
import type { Entry } from '../../../src/core/job/entries.ts'
import { lapsedAt, lapsedText } from '../../../src/core/job/lapsed-at.ts'
import { stamp } from '../../../src/core/lib/instant.ts'
import { gatesSection } from '../../../src/core/report/paper-body.ts'
import { questionBlocks } from '../../../src/core/review/asked.ts'
import { entryAlone } from '../../../src/core/review/item.ts'
import { entryBlock } from '../../../src/core/sheet/entry-block.ts'
import { Walk } from '../../helpers/example.ts'
import { reported } from '../../helpers/reported.ts'
import { moved, reviewed, reviewOfEntries } from '../../helpers/reviewed.ts'

/** Six figures of the bore, then nothing for 40 min of a life of 30; then what is keyed. */
const asleep = (...lines: string[]) =>
  new Walk()
    .toBore()
    .keys('9.5033', '9.5034')
    .wait(40)
    .keys(...lines)
const fallIn = (walk: Walk) => walk.entries.find((e) => e.type === 'gate.closed') as Entry
const firstGas = (walk: Walk) =>
  walk.entries.find((e) => e.type === 'evidence.given' && e.item === 'oxygen_breathing') as Entry
const clock = (at: string) => at.slice(11, 16)
const rows = (blocks: readonly { readonly rows: readonly { readonly text: string }[] }[] | null) =>
  (blocks ?? []).flatMap((one) => one.rows.map(({ text }) => text.trim())).join('\n')

describe('a lapse that nobody was awake for', () => {
  const walk = asleep('9.5021')
  const fall = fallIn(walk)
  const told = `lapsed ${clock(moved(firstGas(walk).at, 30))}, noted ${clock(fall.at)}`

  it('is of the moment at which its life was over, by the first figure of it; the entry stays as it was stamped', () => {
    const at = lapsedAt(walk.engine.defs, walk.state, fall)
    expect(at === null ? null : stamp(at)).toBe(moved(firstGas(walk).at, 30))
    expect(lapsedText(walk.engine.defs, walk.state, fall)).toBe(told)
    expect(clock(fall.at) > clock(moved(firstGas(walk).at, 30))).toBe(true)
  })

  it('is told so on the sheet, right below the call to come out', () => {
    const block = entryBlock(walk.engine.defs, walk.state, fall)
    expect(block?.rows.map(({ text }) => text)).toEqual([
      'HOLD. COME OUT AND STAND CLEAR: the gas test is past its life.',
      `  ${told}`,
      expect.stringMatching(/^ {2}void: /),
    ])
  })

  it('is told so in the review, in answers and in the report', () => {
    expect(reviewed(walk).exceptions.flatMap(({ sentences }) => sentences)).toContainEqual(
      expect.stringContaining(`Fell, ${told}: the gas test is past its life`),
    )
    const record = { review: reviewed(walk), ...walk, defs: walk.engine.defs }
    for (const asked of ['when did the gas run out', 'who was in'])
      expect(rows(questionBlocks(record, asked))).toContain(told)
    expect(JSON.stringify(gatesSection(reported(walk)))).toMatch(/past its life, lapsed \S+, noted \S+; void/)
  })

  it('has its days where it was over on another', () => {
    const night = new Walk()
      .toBore()
      .wait(24 * 60)
      .keys('9.5021')
    expect(lapsedText(night.engine.defs, night.state, fallIn(night))).toMatch(
      /^lapsed 2026-03-14 06:\d\d, noted 2026-03-15 06:\d\d$/,
    )
  })

  it('is told by one time where it was noted within the minute, and where something else felled it', () => {
    const awake = new Walk().toBore()
    const gas = firstGas(awake)
    awake.now = { ...awake.now, ms: Date.parse(moved(gas.at, 30)) + 59_000 }
    awake.bring({ do: 'tick' })
    expect(fallIn(awake)).toMatchObject({ cause: 'lapsed' })
    expect(lapsedText(awake.engine.defs, awake.state, fallIn(awake))).toBeNull()
    const other = { ...fallIn(walk), cause: 'people' } as Entry
    expect(lapsedAt(walk.engine.defs, walk.state, other)).toBeNull()
  })
})

describe('what was keyed after it was over, and before anybody noted', () => {
  it('is a reading kept as late, and counts for nothing until it is confirmed', () => {
    const walk = asleep('9.5021')
    expect(walk.last).toMatchObject({ type: 'reading.late', typed: '9.5021' })
    expect(
      Object.values(walk.state.readings)
        .flat()
        .map(({ typed }) => typed),
    ).not.toContain('9.5021')
  })

  it('is refused where it is no reading: a tick behind the hold point', () => {
    const before = new Walk().throughGate()
    expect(before.prompt).toMatchObject({ kind: 'confirm' })
    const later = before.copy().wait(40)
    later.key('1')
    expect(later.entries.slice(before.entries.length).map(({ type }) => type)).toEqual(['gate.closed'])
    expect(before.keys('1').last.type).toBe('step.confirmed')
  })

  it('in a log from elsewhere is work that went on behind it', () => {
    const walk = asleep('9.5021')
    const fall = fallIn(walk)
    const own = walk.entries.find((e) => e.type === 'reading.taken' && e.step === 'bore') as Entry
    const between = { ...own, at: moved(firstGas(walk).at, 31), place: 'bore.head_end.horizontal' } as Entry
    const put = (one: Entry) =>
      [...walk.entries.slice(0, fall.seq), one, ...walk.entries.slice(fall.seq)].map((entry, seq) => ({
        ...entry,
        seq,
      })) as Entry[]
    const texts = (entries: readonly Entry[]) =>
      reviewOfEntries(walk.engine.defs, entries)
        .exceptions.map(({ what }) => what)
        .join('\n')
    expect(texts(put(between))).toMatch(/WORK WENT ON behind it: 2 Hold point/)
    expect(texts(put({ ...between, at: moved(firstGas(walk).at, 29) } as Entry))).not.toMatch(/WORK WENT ON/)
  })
})

describe('the entry of a hold point that was complete', () => {
  const opened = (walk: Walk) => {
    const entry = walk.entries.find((e) => e.type === 'gate.opened') as Entry
    return rows(
      entryAlone(walk.entries, asOpened(walk.engine.defs), entry.seq, {
        width: 79,
        record: 'EXAMPLE',
        ascii: false,
      }),
    )
  }

  it('says until when it held by what was shown, and when it fell', () => {
    const walk = asleep('9.5021')
    const end = clock(moved(firstGas(walk).at, 30))
    const text = opened(walk)
    expect(text).toContain(`By the life of what was shown it held until ${end}, and no longer.`)
    expect(text).toContain(
      `It fell, lapsed ${end}, noted ${clock(fallIn(walk).at)} (entry ${fallIn(walk).seq}): the gas test is past its life.`,
    )
  })

  it('says that it had not fallen when the log ends, or when the job was closed', () => {
    expect(opened(new Walk().toBore())).toContain('It had not fallen when this log ends.')
    const closed = new Walk().toVerdict().keys('1', 'KH', 'read again, none given', '')
    expect(opened(closed)).toMatch(/It had not fallen when the job was closed, 06:\d\d\./)
  })
})
