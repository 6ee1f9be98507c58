// A lead acts from a review: the job is taken up for one word, answers what is a lead's, and is left again.
import { describe, expect, it } from 'vitest'
import { openDesk } from '../../src/app/desk.ts'
import { createSession, type Snapshot } from '../../src/app/session.ts'
import { neverReleased } from '../../src/core/job/admit-stop.ts'
import type { Entry } from '../../src/core/job/entries.ts'
import { promptView } from '../../src/core/sheet/prompt-view.ts'
import { PIN_COUNTS_MS } from '../../src/core/talk/desk-first.ts'
import type { DeskWord } from '../../src/core/talk/desk-words.ts'
import { pinOf, Walk } from '../helpers/example.ts'
import { noFiles } from '../helpers/files.ts'
import { sheetJob, WHOLE } from '../helpers/filled-sheet.ts'
import { smallAtSize } from '../helpers/reviewed.ts'
import { noVoice } from '../helpers/voice.ts'

const PINS = ['RO', 'ML', 'KH', 'PB'].map(pinOf)

/** The job of the walk, left, and taken up at the desk. */
async function desk(walk: Walk, word: Exclude<DeskWord, 'remark'>) {
  walk.key('leave')
  const written: Entry[] = []
  const session = createSession({
    engine: walk.engine,
    state: walk.state,
    shown: walk.entries.map((entry, key) => ({ key, kind: 'entry', entry, state: walk.state })),
    journal: { append: async (entries) => void written.push(...entries) },
    clock: { now: () => walk.now, running: () => walk.now.ms },
    others: { look: walk.others },
    files: noFiles,
    voice: noVoice,
    pins: { fits: async (pin) => PINS.includes(pin) },
  })
  const at = await openDesk(session, word)
  const keys = async (...lines: string[]) => {
    for (const line of lines) await at.hear(line)
  }
  const said = () => at.snapshot().shown.flatMap((one) => (one.kind === 'said' ? one.lines : []))
  const wait = (minutes: number) => walk.wait(minutes)
  return { session, at, keys, said, wait, types: () => written.map(({ type }) => type) }
}

const stopped = () => new Walk().toBore().keys('stop', '1', 'smells of gas', 'RO')
const withFinding = () => smallAtSize().keys('9.5033', '2', 'a score at 3', '')

describe('a STOP from the desk', () => {
  it('is released by a lead with the questions of the job, and the job is left again', async () => {
    const { at, keys, types } = await desk(stopped(), 'release')
    expect(at.snapshot().talk.ask?.kind).toBe('release-who')
    await keys('KH', 'tested again, 0 % LEL', '8314')
    expect(types()).toEqual(['job.taken-up', 'stop.released', 'job.left'])
  })

  it('is refused there in the words of the job, and nothing but coming and going is on record', async () => {
    const { keys, said, types } = await desk(stopped(), 'release')
    await keys('ML')
    expect(said().join(' ')).toMatch(/ML is a .*, and only a lead releases a STOP\./)
    await keys('back', 'leave')
    expect(types()).toEqual(['job.taken-up', 'job.left'])
  })

  it('can be raised there: it is on record before the job is even taken up, and its cause is asked', async () => {
    const { at, keys, types } = await desk(new Walk().toBore(), 'stop')
    expect(types()).toEqual(['stop.raised', 'job.taken-up'])
    expect(at.snapshot().state.left).toBe(false)
    await keys('1', 'smells of gas', '?', 'leave')
    expect(types()).toEqual(['stop.raised', 'job.taken-up', 'stop.explained', 'job.left'])
  })
})

describe('a STOP raised while nobody is signed on', () => {
  it('is nobody’s until its caller is named: who was at the keyboard last may release it, who called may not', async () => {
    const { session, keys, said } = await desk(
      new Walk().toBore().keys('handover', 'KH', pinOf('KH')),
      'stop',
    )
    expect(session.snapshot().state.doer).toBeNull()
    const [stop] = session.snapshot().state.stops
    expect(stop?.by).toBeNull()
    await keys('1', 'smells of gas', 'PB')
    expect(session.snapshot().state.stops[0]?.cause).toBeNull()
    await keys(pinOf('PB'))
    await keys('release', 'PB')
    expect(said().join(' ')).toContain('PB called this STOP, so another lead has to release it.')
    await keys('KH', 'tested again, 0 % LEL', pinOf('KH'))
    expect(session.snapshot().state.stops[0]?.releasedBy).toBe('KH')
  })

  it('is released by nobody where its caller is not known', async () => {
    const { session, at, keys } = await desk(new Walk().toBore(), 'stop')
    await keys('1', 'smells of gas')
    expect(at.snapshot().talk.ask?.kind).toBe('stop-caller-nobody')
    await keys('?')
    expect(neverReleased(session.snapshot().state)).toMatch(/Nobody knows who raised or called/)
  })
})

describe('what was found', () => {
  it('is decided on after signing on, and the job closes with it', async () => {
    const { at, keys, types } = await desk(withFinding(), 'dispose')
    await keys('KH', '8314', '1', '1', 'KH', 'polished out, none given', '8314')
    expect(types()).toEqual([...['job.taken-up', 'person.signed-on', 'disposition.set', 'job.closed']])
    expect(at.snapshot().state.closed).not.toBeNull()
  })

  it('says before anything is asked what it is for, who decides, who signs on, and that radio is never keyed alone', async () => {
    const { said, types } = await desk(withFinding(), 'dispose')
    expect(types()).toEqual(['job.taken-up'])
    expect(said()).toEqual([
      'dispose: decide on a finding.',
      'Decided by a lead who did none of that work: KH K. Haas or PB P. Bright.',
      expect.stringMatching(
        /^By radio never alone: .* Of ML, KH, PB a second one comes on first, by the words sign on\.$/,
      ),
      'First signs on whoever is at the keys: RO, ML, KH, PB.',
      expect.stringMatching(/^Their PIN signs for the first of it that they decide too/),
    ])
  })

  it('asks one PIN of one person for one act, and another for the next', async () => {
    const { at, keys, session } = await desk(withFinding(), 'dispose')
    await keys('KH', '8314', '1', '6', 'KH')
    expect(at.snapshot().talk.ask?.kind).toBe('dispose-why')
    await keys('not fit')
    const [set] = Object.values(session.snapshot().state.dispositions)
    expect(set).toMatchObject({ choice: 'hold', person: 'KH' })
  })

  it('asks the PIN anew of another person, and of the same one once it was let lie', async () => {
    const other = await desk(withFinding(), 'dispose')
    await other.keys('PB', '6053', '1', '1', 'KH', 'polished out, none given')
    expect(other.at.snapshot().talk.ask).toMatchObject({ kind: 'pin', person: 'KH' })
    const late = await desk(withFinding(), 'dispose')
    await late.keys('KH', '8314', '1', '1', 'KH')
    late.wait(PIN_COUNTS_MS / 60_000 + 1)
    await late.keys('polished out')
    expect(late.at.snapshot().talk.ask).toMatchObject({ kind: 'pin', person: 'KH' })
    expect(late.types()).not.toContain('disposition.set')
  })

  it('asks the PIN anew where anything went on record since: somebody else may be at the keys', async () => {
    const { at, keys } = await desk(withFinding(), 'dispose')
    await keys('KH', '8314', 'sign on', 'ML', pinOf('ML'), '1', '1', 'KH', 'polished out, none given')
    expect(at.snapshot().talk.ask).toMatchObject({ kind: 'pin', person: 'KH' })
  })

  it('goes on record with a wrong PIN before it as everywhere', async () => {
    const { keys, types } = await desk(withFinding(), 'dispose')
    await keys('KH', '1111')
    expect(types()).toContain('pin.missed')
  })
})

describe('a word by radio at the desk', () => {
  const spoken = () =>
    new Walk()
      .toVerdict()
      .keys('sign on', 'ML', '1', 'radio', 'KH', 'run it, read again in 8000 h', 'ML', 'ALL OUT')
  const viewed = ({ engine: { defs } }: Walk, { state, talk }: Snapshot) =>
    promptView(defs, state, talk, { width: 79, record: 'EXAMPLE', ascii: true })

  it('is headed by what is signed for, and by no plate: nobody stands at the machine there', async () => {
    const walk = spoken()
    const { at, keys, types } = await desk(walk, 'countersign')
    await keys('KH', pinOf('KH'))
    const who = viewed(walk, at.snapshot())
    expect(at.snapshot().talk.ask?.kind).toBe('countersign-who')
    expect(who.title).toBe('Said by radio, and not signed for yet')
    expect(who.rows[0]?.text).toMatch(/by radio from KH, keyed by ML: run it, read again in 8000 h$/)
    // What is nobody's initials is asked again, and throws nobody out.
    await keys('TC-401-1')
    expect(at.snapshot().talk.ask?.kind).toBe('countersign-who')
    await keys('KH')
    expect(viewed(walk, at.snapshot()).title).toBe('Said by radio, by KH?')
    await keys('1')
    expect(types().slice(-2)).toEqual(['disposition.countersigned', 'job.left'])
  })

  it('nor is a note', async () => {
    // Whatever the job itself asks next: work at the machine, or a decision.
    for (const walk of [new Walk().toBore(), new Walk().toVerdict()]) {
      const { at, keys } = await desk(walk, 'note')
      await keys('KH', pinOf('KH'))
      expect(viewed(walk, at.snapshot()).title).toBe('A note into the log of this job')
    }
  })
})

describe('a sheet that is keyed', () => {
  it('is compared from the desk by a lead who keyed none of it, with one PIN, and closes', async () => {
    const { at, said, keys, types } = await desk(sheetJob().keys(...WHOLE.slice(0, -1)), 'sign')
    expect(said()[0]).toBe('sign: the sheet compared with the paper.')
    // RO keyed it, and is no lead.
    expect(said()[1]).toMatch(
      /^Signed by a lead who keyed none of it, with the paper in hand: KH K\. Haas or PB/,
    )
    await keys('PB', '6053', 'PB')
    expect(types()).toEqual(['job.taken-up', 'person.signed-on', 'paper.signed', 'job.closed'])
    expect(at.snapshot().state.closed).toBe('MONITOR')
  })
})

describe('a job that asks for work', () => {
  it('takes a note of who signed on, and is left', async () => {
    const { keys, types } = await desk(new Walk().toBore(), 'note')
    await keys('KH', '8314', 'seen with the owner')
    expect(types()).toEqual(['job.taken-up', 'person.signed-on', 'note.written', 'job.left'])
  })

  it('is left at once where nothing is asked of a lead, and nothing that is keyed is an answer', async () => {
    const { session, keys, types } = await desk(new Walk().toBore(), 'dispose')
    await keys('KH', '8314')
    expect(types()).toEqual(['job.taken-up', 'person.signed-on', 'job.left'])
    await keys('ALL OUT')
    expect(session.snapshot().state.left).toBe(true)
    expect(types()).not.toContain('people.clear')
  })

  it('hears no line at a question that came up under the keys and is not a lead’s', async () => {
    const { session, keys, types } = await desk(new Walk().toBore(), 'note')
    await session.hear('KH')
    await session.hear('8314')
    await session.hear('RO')
    await keys('ALL OUT')
    expect(types().slice(-1)).toEqual(['job.left'])
    expect(types()).not.toContain('people.clear')
  })

  it('shows at the desk what came since, and no more', async () => {
    const { at } = await desk(new Walk().toBore(), 'note')
    const shown = at.snapshot().shown.map((one) => (one.kind === 'entry' ? one.entry.type : 'said'))
    expect(shown).toEqual(['job.taken-up', 'said'])
    expect(at.snapshot()).toBe(at.snapshot())
  })
})

describe('what was read at the machine', () => {
  it('is corrected by nobody at the desk, and the question of the verdict stands', async () => {
    const { at, keys, said, types } = await desk(new Walk().toVerdict(), 'dispose')
    await keys('KH', '8314', 'correct')
    expect(said().join(' ')).toContain('is not changed at a desk')
    expect(at.snapshot().talk.ask).toBeNull()
    const [seq] = Object.values(at.snapshot().state.readings).flatMap((all) => all.map((one) => one.seq))
    await at.bring({ do: 'correct', of: seq ?? 0, typed: '9.5070', why: 'misread' })
    await at.bring({ do: 'reopen', step: 'strip', why: 'look again' })
    await at.bring({ do: 'put-back', seat: 'gauge' })
    await keys('back')
    expect(types().filter((type) => !['job.taken-up', 'person.signed-on'].includes(type))).toEqual([])
    expect(said().join(' ')).toMatch(/barover resume/)
  })
})
