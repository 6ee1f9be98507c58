// A running job: lines in, blocks out. An entry is on disk before anything of it is shown. Knows no terminal.
import { admit, type Engine } from '../core/job/admit.ts'
import { type Definitions, personById } from '../core/job/definitions.ts'
import { asOpened, defsAt, type Editions } from '../core/job/editions.ts'
import { NO_OTHERS } from '../core/job/elsewhere.ts'
import type { Entry } from '../core/job/entries.ts'
import { fold } from '../core/job/fold.ts'
import type { Input } from '../core/job/input.ts'
import { next } from '../core/job/next.ts'
import { waitAfterMisses } from '../core/job/signature.ts'
import type { State } from '../core/job/state.ts'
import type { Instant } from '../core/lib/instant.ts'
import { type Ask, secrecyOf } from '../core/talk/ask.ts'
import { afterFound, type FileWork } from '../core/talk/ask-file.ts'
import { followUp } from '../core/talk/ask-register.ts'
import { questionIn } from '../core/talk/asked.ts'
import { proven } from '../core/talk/crew-words.ts'
import { hear } from '../core/talk/hear.ts'
import { ask, type Heard, type PinKeyed, QUIET, say, type Talk } from '../core/talk/heard.ts'
import { makeSafeLines } from '../core/talk/make-safe.ts'
import { isMakeSafe, PIN_DROPPED } from '../core/talk/words.ts'
import { headLines } from './head.ts'
import type { Clock, Completion, FilesPort, JournalPort, OthersPort, PinCheck, VoicePort } from './ports.ts'
import { createReader } from './reader.ts'

/** One thing for the transcript: an entry with the states around it, or words that are on no record. */
export type Shown =
  | { readonly key: number; readonly kind: 'entry'; readonly entry: Entry; readonly state: State }
  | {
      readonly key: number
      readonly kind: 'said'
      readonly lines: readonly string[]
      readonly refusal: boolean
    }

export interface Snapshot {
  readonly state: State
  readonly talk: Talk
  readonly now: Instant
  readonly shown: readonly Shown[]
}

export interface Session {
  readonly engine: Engine
  /** What an entry of the transcript is shown by: by the machine record of its time. */
  readonly defsAt: (entry: Entry) => Definitions
  readonly snapshot: () => Snapshot
  readonly subscribe: (listener: () => void) => () => void
  /**
   * A line somebody keyed. Lines are taken one after the other. `unseen`: it was keyed where a PIN was asked, or before it
   * was known whether one is; if by the time it is heard none is, and it could be one, it is dropped.
   */
  readonly hear: (line: string, unseen?: boolean) => Promise<void>
  /** Time went by; what has lapsed falls now. */
  readonly tick: () => Promise<void>
  /** Looks at the other jobs on the machine; nothing is drawn anew unless one of them changed something here. */
  readonly look: () => Promise<void>
  /** All but a changed machine record: this session works by the one it has, so that is taken in while the job is left. */
  readonly bring: (input: Exclude<Input, { do: 'take-in' }>) => Promise<void>
  /** A PIN keyed where no talk is: held against the key like any other. False: it was a wrong one, and is on record. */
  readonly sign: (keyed: PinKeyed) => Promise<boolean>
  /** Resolves when nothing is looked for or copied any more: a script waits for it, a person at the keyboard does not. */
  readonly settled: () => Promise<void>
  /** The path being keyed, as far as it can be completed. */
  readonly complete: (typed: string) => Promise<Completion>
  /** Shows the make-safe sheet at once, whatever is still being written. */
  readonly makeSafe: () => void
}

/** Other jobs answer what they see with an entry or two of their own; the next look takes what is left. */
const MOST_LOOKS = 8

/** Wall and running clock may part by this much before it counts as a clock that was moved. */
const CLOCK_SLACK_MS = 5000

interface Start {
  readonly engine: Engine
  /** Definitions of earlier entries, where a machine record was taken in; those of the engine unless said. */
  readonly editions?: Editions
  readonly state: State
  readonly shown: readonly Shown[]
  readonly journal: JournalPort
  readonly clock: Clock
  readonly pins: PinCheck
  readonly others: OthersPort
  readonly files: FilesPort
  readonly voice: VoicePort
}

/** Keyed where a PIN was asked: figures, and what would be looked up if it were keyed elsewhere. */
function couldBePin(line: string): boolean {
  return /^\s*\d{4,}\s*$/.test(line) || questionIn(line) !== null
}

export function createSession(start: Start): Session {
  const { engine, journal, clock, pins, others, files, voice } = start
  const editions = start.editions ?? asOpened(engine.defs)
  const listeners = new Set<() => void>()
  let snapshot: Snapshot = { state: start.state, talk: QUIET, now: clock.now(), shown: start.shown }
  let key = start.shown.length
  let queue: Promise<void> = Promise.resolve()
  /** Work on files, one after the other, beside the queue: no slow disk may hold back a STOP or the clock. */
  let filing: Promise<void> = Promise.resolve()
  let fault: { readonly error: unknown } | null = null
  let apartAtStart = snapshot.now.ms - clock.running()

  const publish = (next: Partial<Snapshot>): void => {
    snapshot = { ...snapshot, ...next }
    for (const listener of listeners) listener()
    reader.follow(snapshot)
  }
  const said = (lines: readonly string[], refusal: boolean): Shown[] =>
    lines.length === 0 ? [] : [{ key: key++, kind: 'said', lines, refusal }]

  const reader = createReader({
    defs: engine.defs,
    voice,
    shown: start.shown.length,
    tell: (line) => publish({ shown: [...snapshot.shown, ...said([line], true)] }),
  })

  /**
   * A wall clock that ran apart from the running clock was moved by somebody: nothing that rests on it stands. Compared
   * with the start, not with the last look, so that a clock moved a little at a time is found too.
   */
  const movedSeconds = (now: Instant): number => {
    const apart = now.ms - clock.running()
    const moved = apart - apartAtStart
    if (Math.abs(moved) <= CLOCK_SLACK_MS) return 0
    apartAtStart = apart
    return Math.round(moved / 1000)
  }

  const take = async (input: Input): Promise<readonly Shown[]> => {
    const now = clock.now()
    const moved = movedSeconds(now)
    const shown: Shown[] = []
    const inputs: Input[] = moved === 0 ? [input] : [{ do: 'clock-moved', seconds: moved }, input]
    for (const one of inputs) {
      const admitted = await put(one, now)
      shown.push(...admitted.shown)
      // Two jobs that wrote at one time: each has written before it looks again, so at least one of them sees the other
      // before anything of this is shown.
      let wrote = admitted.wrote
      for (let n = 0; wrote && n < MOST_LOOKS; n++) {
        const again = await put({ do: 'tick' }, now)
        shown.push(...again.shown)
        wrote = again.wrote
      }
    }
    return shown
  }

  const put = async (input: Input, now: Instant): Promise<{ shown: readonly Shown[]; wrote: boolean }> => {
    // A closed job rests on nothing any more.
    const seen = snapshot.state.closed === null ? others.look() : NO_OTHERS
    const admitted = admit(engine, snapshot.state, input, now, seen)
    if (admitted.entries.length > 0) await journal.append(admitted.entries)
    const shown: Shown[] = []
    let state = snapshot.state
    for (const entry of admitted.entries) {
      state = fold(state, entry)
      shown.push({ key: key++, kind: 'entry', entry, state })
    }
    if (admitted.entries.length > 0) snapshot = { ...snapshot, state, now }
    if (admitted.refusal !== null) shown.push(...said([admitted.refusal.say], true))
    return { shown, wrote: admitted.entries.length > 0 && state.closed === null }
  }

  /** Holds the PIN against the key; a person who has to wait after wrong ones is told so and the PIN is not looked at. */
  const prove = async ({
    person,
    pin,
    what,
    asked,
  }: PinKeyed): Promise<{ shown: readonly Shown[]; talk: Talk }> => {
    const mustWait = waitAfterMisses(snapshot.state, person, clock.now().ms) !== null
    const key = personById(engine.defs, person)?.pin
    if (mustWait || key === undefined) return { shown: await take(what), talk: QUIET }
    if (await pins.fits(pin, key)) {
      const heard = proven(what)
      const taken = heard.input === null ? [] : await take(heard.input)
      // What it was keyed for was not taken, or is only half signed: it ends the row of wrong ones all the same.
      const isInRow = snapshot.state.pinMisses[person] !== undefined
      const shown = isInRow ? [...taken, ...(await take({ do: 'pin-fitted', person }))] : taken
      return { shown, talk: talkAfter(heard) }
    }
    return {
      shown: await take({ do: 'pin-missed', person }),
      talk: { ask: asked ?? { kind: 'pin', person, what } },
    }
  }

  const isSecretNow = () => secrecyOf(next(engine.defs, snapshot.state), snapshot.talk.ask) !== 'open'

  /** What stands asked once the input is in: often nothing, sometimes the second of two signatures. */
  const talkAfter = ({ talk, input }: Heard): Talk =>
    input === null ? talk : { ask: followUp(snapshot.state, input) ?? talk.ask }

  const inTurn = (work: () => Promise<void>): Promise<void> => {
    queue = queue.then(() => {
      if (fault !== null) throw fault.error
      return work()
    })
    return queue
  }

  /** `asked`: the question that stands while the file is looked for; answered by something else, what is found is dropped. */
  const startFiling = (work: FileWork, asked: Ask | null): void => {
    filing = filing
      .then(() => (work.do === 'keep' ? keep(work) : look(work, asked)))
      .catch((error: unknown) => {
        fault = { error }
      })
  }

  const look = async (work: Exclude<FileWork, { do: 'keep' }>, asked: Ask | null): Promise<void> => {
    const found = await (work.do === 'find' ? files.find(work.path) : files.newest())
    await inTurn(async () => {
      if (snapshot.talk.ask !== asked) return
      const heard = found.ok ? afterFound(work.do, found.value) : ask({ kind: 'attach-path' })
      const lines = found.ok ? heard.say : [found.error.say]
      publish({ talk: heard.talk, shown: [...snapshot.shown, ...said(lines, !found.ok)] })
    })
  }

  const keep = async ({ file, caption }: Extract<FileWork, { do: 'keep' }>): Promise<void> => {
    const kept = await files.keep(file)
    if (!kept.ok) {
      const lines = [`${kept.error.say} Nothing was attached.`]
      return inTurn(async () => publish({ shown: [...snapshot.shown, ...said(lines, true)] }))
    }
    await inTurn(async () => {
      const shown = await take({ do: 'attach', ...kept.value, caption })
      // On record means on disk; what did not go on record does not stay there either.
      if (!snapshot.state.files.some((f) => f.name === kept.value.name)) await files.discard(kept.value.name)
      publish({ now: clock.now(), shown: [...snapshot.shown, ...shown] })
    })
  }

  /** What lapses meanwhile lapses, as it would have. */
  const pass = async (ms: number): Promise<readonly Shown[]> => {
    if (clock.pass === undefined)
      return said(['The clock of this session goes by itself: nobody can let time go by.'], true)
    clock.pass(ms)
    return take({ do: 'tick' })
  }

  const makeSafe = (): void => {
    const sheet = said(makeSafeLines(engine.defs, snapshot.state), false)
    publish({ shown: [...snapshot.shown, ...sheet] })
  }

  return {
    engine,
    defsAt: ({ seq }) => defsAt(editions, seq),
    makeSafe,
    complete: (typed) => files.complete(typed),
    settled: async () => {
      for (let last = null as Promise<void> | null; last !== filing; ) {
        last = filing
        await last
      }
      if (fault !== null) throw fault.error
    },
    snapshot: () => snapshot,
    subscribe: (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    hear: async (line, unseen = false) => {
      if (isMakeSafe(line)) return makeSafe()
      return inTurn(async () => {
        const heard =
          unseen && !isSecretNow() && couldBePin(line)
            ? say(PIN_DROPPED)
            : hear(engine.defs, snapshot.state, snapshot.talk, line, clock.now())
        const head = heard.withHead === true ? headLines(journal.head?.()) : []
        const aloud = heard.aloud === undefined ? [] : reader.turn(heard.aloud)
        const passed = heard.passMs === undefined ? [] : await pass(heard.passMs)
        const shown = [
          ...said([...heard.say, ...head, ...aloud], heard.untaken === true),
          ...passed,
          ...said(heard.refusal === undefined ? [] : [heard.refusal.say], true),
          ...(heard.input === null ? [] : await take(heard.input)),
        ]
        const proved =
          heard.pin === undefined ? { shown: [], talk: talkAfter(heard) } : await prove(heard.pin)
        publish({
          talk: proved.talk,
          now: clock.now(),
          shown: [...snapshot.shown, ...shown, ...proved.shown],
        })
        if (heard.file !== undefined) startFiling(heard.file, snapshot.talk.ask)
      })
    },
    tick: () =>
      inTurn(async () => {
        const shown = await take({ do: 'tick' })
        publish({ now: clock.now(), shown: [...snapshot.shown, ...shown] })
      }),
    look: () =>
      inTurn(async () => {
        if (snapshot.state.closed !== null) return
        const shown = await take({ do: 'tick' })
        if (shown.length > 0) publish({ now: clock.now(), shown: [...snapshot.shown, ...shown] })
      }),
    bring: (input) =>
      inTurn(async () => {
        const shown = await take(input)
        publish({ talk: QUIET, now: clock.now(), shown: [...snapshot.shown, ...shown] })
      }),
    sign: async (keyed) => {
      let isAskedAgain = false
      await inTurn(async () => {
        const { shown, talk } = await prove(keyed)
        isAskedAgain = talk.ask?.kind === 'pin'
        publish({ talk: QUIET, now: clock.now(), shown: [...snapshot.shown, ...shown] })
      })
      return !isAskedAgain
    },
  }
}
