// The conversation on a terminal: what is on record above, for good; what is asked now below, redrawn as it changes.
import { Box, Static, useApp } from 'ink'
import { useCallback, useEffect, useMemo, useRef, useState, useSyncExternalStore } from 'react'
import type { Session, Shown } from '../app/session.ts'
import { cut } from '../core/lib/text.ts'
import { lessonOn } from '../core/practice/lesson.ts'
import {
  type Block,
  isSmall,
  type Line,
  layOut,
  row,
  type SheetStyle,
  textWidth,
} from '../core/sheet/block.ts'
import { foot, nextChangeMs } from '../core/sheet/foot.ts'
import { withInHand } from '../core/sheet/in-hand-row.ts'
import { lessonBlock } from '../core/sheet/practice-block.ts'
import { promptView } from '../core/sheet/prompt-view.ts'
import { fitRefused } from '../core/sheet/refused.ts'
import { entryBlocks, markedVoid, saidBlock, toldShort } from '../core/sheet/shown-block.ts'
import { enterCloses } from '../core/sheet/stays-on.ts'
import { roomAbove, roomForRefusal } from '../core/sheet/to-read.ts'
import { isAskedHere } from '../core/talk/asked-here.ts'
import { withListed } from '../core/talk/correct.ts'
import { mayBeKept } from '../core/talk/may-be-kept.ts'
import { tellsOfHarm } from '../core/talk/safety-asked.ts'
import { helpInLines } from '../core/talk/tell-about.ts'
import { isBounce, TOO_SOON } from './bounce.ts'
import { InputLine } from './input-line.tsx'
import { SheetLine } from './sheet-line.tsx'
import { fitsLine } from './tab.ts'
import { useKept } from './use-kept.ts'
import { useKeys } from './use-keys.ts'
import { useLineEditor } from './use-line-editor.ts'
import { askedName, heldBack, useSide } from './use-side.ts'
import { useTerminalSize } from './use-terminal-size.ts'
import { useToRead } from './use-to-read.ts'

/** Entries shown again when a job is taken up; the whole is in the log. */
const SHOWN_AGAIN = 30
/** Rows of what was taken that a drawing gives way to: a block that is longer goes up out of sight anyway. */
const MOST_TAKEN = 8
const AGAIN_WITHIN_MS = 2000
const LOOK_MS = 2000

export interface JobScreenProps {
  readonly session: Session
  readonly style: SheetStyle
  /** Said under the first question. */
  readonly notice?: string | null
  readonly onEnd: (how: 'over' | 'interrupted' | Error) => void
}

export function JobScreen({ session, style: base, notice: first = null, onEnd }: JobScreenProps) {
  const snapshot = useSyncExternalStore(session.subscribe, session.snapshot)
  const size = useTerminalSize()
  const { exit } = useApp()
  const style = useMemo(() => ({ ...base, width: Math.max(30, size.columns - 1) }), [base, size.columns])
  const [notice, setNotice] = useState<string | null>(first)
  /** Keyed before all was turned over, so that nobody heard it. Empty: nothing of it may be drawn. */
  const [unheard, setUnheard] = useState<string | null>(null)
  const ending = useRef(false)
  const end = useCallback(
    (how: 'over' | 'interrupted' | Error) => {
      if (ending.current) return
      ending.current = true
      onEnd(how)
      exit()
    },
    [exit, onEnd],
  )
  const { state, talk, now } = snapshot
  const { defs } = session.engine
  const asked = promptView(defs, state, talk, style)
  const isOver = state.closed !== null || state.left

  /** Since when the sheet as it is has been up. */
  const up = useRef({ seq: -1, at: 0 })
  if (up.current.seq !== state.seq) up.current = { seq: state.seq, at: performance.now() }
  /** Of what is chosen from, as many as are on the screen: no other number is one, and the word for more goes on from there. */
  const listed = useRef(0)
  /** From where on the transcript came with the last line: that stays in sight. */
  const came = useRef(firstUnread(session))
  const pending = useRef(0)
  const submit = useCallback(
    async (line: string, unseen: boolean) => {
      setNotice(null)
      setUnheard(null)
      came.current = session.snapshot().shown.length
      pending.current++
      const isOfList = session.snapshot().talk.ask?.kind === 'correct-which' && listed.current > 0
      await session
        .hear(isOfList ? withListed(line, listed.current) : line, unseen)
        .catch((error: unknown) => end(error instanceof Error ? error : new Error(String(error))))
      pending.current--
    },
    [session, end],
  )
  const tabWork = useMemo(
    () => ({
      complete: session.complete,
      makeSafe: () => {
        came.current = session.snapshot().shown.length
        session.makeSafe()
      },
    }),
    [session],
  )
  // Asked of the session itself at the moment of the key: what is on the screen may be older.
  const promptNow = useCallback(() => {
    const { state: at, talk: question } = session.snapshot()
    return promptView(defs, at, question, style)
  }, [session, defs, style])
  const lastInterrupt = useRef(Number.NEGATIVE_INFINITY)
  const leaving = useRef(false)
  const interrupt = useCallback(() => {
    if (leaving.current) return
    const at = performance.now()
    if (at - lastInterrupt.current < AGAIN_WITHIN_MS) {
      leaving.current = true
      session.bring({ do: 'leave' }).then(
        () => end('interrupted'),
        (error: unknown) => end(error instanceof Error ? error : new Error(String(error))),
      )
      return
    }
    lastInterrupt.current = at
    setNotice('Everything above is on disk. Control-C once more leaves the job.')
  }, [session, end])
  useEffect(() => {
    if (notice === null || notice === first) return
    // Once the second press would no longer leave, the notice would not be true.
    const timer = setTimeout(() => setNotice(null), AGAIN_WITHIN_MS)
    return () => clearTimeout(timer)
  }, [notice, first])
  const below = foot(defs, state, now)
  const laidOut = (one: Shown) => linesOf(session, one, 0, style, size.columns)
  const cameNow = snapshot.shown.slice(came.current)
  const withShown = (aboveFrom: number) =>
    withInHand(defs, state, { view: asked, question: talk.ask, style, aboveFrom })
  // A window that was pulled to another size has broken or hidden what stood above: nothing of it is counted on.
  const sized = useRef({ columns: size.columns, rows: size.rows, from: 0 })
  if (sized.current.columns !== size.columns || sized.current.rows !== size.rows)
    sized.current = { columns: size.columns, rows: size.rows, from: snapshot.shown.length }
  const standsNow = snapshot.shown.slice(Math.max(came.current, sized.current.from))
  const firstNow = standsNow.find((one) => one.kind === 'entry')?.entry.seq ?? Number.POSITIVE_INFINITY
  const framed = { foot: below, style, ...size, unheard }
  const overView = { ...framed, view: withShown(firstNow) }
  const overLast = roomForRefusal({ ...overView, notice: null })
  const heldFrom = useToRead({
    shown: snapshot.shown,
    came: came.current,
    isPending: pending.current > 0,
    room: roomAbove({ ...overView, notice: null }),
    isOver,
    heightOf: (one) => laidOut(one).length,
    isToRead: (one) => isToRead(session, one, style) && !(isRefusal(one) && laidOut(one).length <= overLast),
  })
  // A refusal is of the line before: it stands under the transcript and is gone with the next line, so that none reads as current.
  const refused = snapshot.shown
    .slice(Math.min(came.current, heldFrom), heldFrom)
    .filter(isRefusal)
    .flatMap(laidOut)
  const toRead = snapshot.shown.slice(heldFrom).flatMap(laidOut)
  // What is held back is turned over before the question: then nothing of it stands above.
  const view = toRead.length === 0 ? overView.view : withShown(Number.POSITIVE_INFINITY)
  const prompted = { ...framed, view }
  const last = snapshot.shown.at(-1)
  // An answer before the last line was read: the question that came since owes it no room.
  const isSaidNow = snapshot.shown.length > came.current
  const rowsIn = (some: readonly Shown[]) => some.reduce((sum, one) => sum + laidOut(one).length, 0)
  const marked = cameNow.findIndex((one) => isMarkedWrong(session, one) || (isAsking(one) && !isSmall(style)))
  const answer = isSaidNow && last?.kind === 'said' ? laidOut(last).length : 0
  const said = marked < 0 ? answer : rowsIn(cameNow.slice(marked))
  const taken = rowsIn(cameNow.filter((one) => one !== last || one.kind === 'entry'))
  const refusesOnly = snapshot.shown.slice(heldFrom).every(isRefusal)
  const bare = { ...prompted, toRead, refusesOnly, said, taken: Math.min(taken, MOST_TAKEN) }
  const readKey = toRead.length === 0 ? '' : String(heldFrom)
  const side = useSide(asked, readKey, (up) => fitRefused({ ...bare, notice, side: up }, refused).turn)
  // What is said beside the question takes room, so whether there is room for the question is asked without it.
  const { tooSmall, turn } = fitRefused({ ...bare, notice, side: side.up }, refused)
  const turnOver = (by: 1 | -1) => {
    setUnheard(null)
    if (side.turn(by)) up.current.at = performance.now()
  }
  const hasMore = turn !== null && turn.at < turn.of - 1
  const isFolded = turn !== null && turn.of - (turn.toRead ?? 0) > 1
  const putLine = useRef<(text: string) => boolean>(() => false)
  const kept = useKept(askedName(asked), hasMore, putLine, setNotice)
  const isHeldBack = (line: string, wasUnseen: boolean) => {
    const { state: at, talk: question } = session.snapshot()
    const closes = question.ask === null && enterCloses(defs, at)
    // Enter turned all sides before it.
    if (!hasMore && isFolded && asked.byEnter && line.trim() === '') {
      setNotice(NOT_BY_ENTER)
      return true
    }
    if (!hasMore && isBounce(line, closes, performance.now() - up.current.at)) {
      setNotice(TOO_SOON)
      return true
    }
    if (kept.isTooSoon(line)) {
      putLine.current(line)
      return true
    }
    // Where initials are asked nothing is drawn of what could be a PIN; words without four figures in a row are none, and may tell of harm.
    const isAsked = !(wasUnseen && /\d{4}/.test(line)) && isAskedHere(defs, at, question, line)
    if (isAsked && tellsOfHarm(line)) kept.drop()
    const held = heldBack(line, tooSmall, hasMore, isAsked)
    if (held === 'turn') turnOver(1)
    const isAnswer = turn !== null && turn.at < (turn.toRead ?? 0)
    if (held === 'unread' && !wasUnseen && mayBeKept(defs, at, question, line, isAnswer) && kept.keep(line)) {
      setUnheard(null)
      return true
    }
    // Figures keyed too early may be a PIN that was not asked for yet.
    if (held === 'unread') setUnheard(wasUnseen || /^\d{4,}$/.test(line.trim()) ? '' : line.trim())
    return held !== null
  }
  const { editor, hidden, press, tab, put, fits } = useLineEditor(
    promptNow,
    tooSmall,
    hasMore,
    isHeldBack,
    submit,
    tabWork,
  )
  putLine.current = put
  const told = fits === null || !view.path ? notice : cut(fitsLine(fits), textWidth(style))
  const drawn = { ...bare, side: side.up, frontRead: side.frontRead, kept: kept.text }
  const withTold = fitRefused({ ...drawn, notice: told }, refused)
  const live = withTold.tooSmall ? fitRefused({ ...drawn, notice }, refused) : withTold
  listed.current = live.choices
  useKeys(press, interrupt, tab, turnOver)
  useTicks(session, end)
  useLooks(session, end)
  useEffect(() => {
    if (isOver) end(leaving.current ? 'interrupted' : 'over')
  }, [isOver, end])

  const skipped = useRef(Math.max(0, snapshot.shown.length - SHOWN_AGAIN))
  const items = useMemo<(Shown | typeof EARLIER)[]>(
    () => [EARLIER, ...snapshot.shown.slice(skipped.current, heldFrom).filter((one) => !isRefusal(one))],
    [snapshot.shown, heldFrom],
  )
  return (
    <>
      <Static items={items}>
        {(item, i) => (
          <Box key={i === 0 ? 'earlier' : (item as Shown).key} flexDirection="column">
            {linesOf(session, item, skipped.current, style, size.columns).map((line, n) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: lines of one entry never change or move
              <SheetLine key={n} line={line} />
            ))}
          </Box>
        )}
      </Static>
      {isOver ? null : (
        <Box flexDirection="column">
          {live.above.map((line, n) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows of a drawing have no other name than their place
            <SheetLine key={n} line={line} />
          ))}
          <InputLine margin={live.inputMargin} editor={editor} width={live.inputWidth} secret={hidden} />
          {live.below.map((line, n) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: as above
            <SheetLine key={n} line={line} />
          ))}
        </Box>
      )}
    </>
  )
}

const NOT_BY_ENTER = 'Enter turns over. Key done.'

const EARLIER = 'earlier'

/** What is up already when the screen begins is read above it; but whoever begins practice reads first how its machine is asked, and the briefing of a scenario. */
function firstUnread(session: Session): number {
  const { shown } = session.snapshot()
  const [only] = shown
  if (shown.length === 1 && only !== undefined && isBriefing(session, only)) return 0
  return shown.length - (shown.at(-1)?.kind === 'said' ? 1 : 0)
}

const isBriefing = (session: Session, one: Shown) =>
  one.kind === 'entry' && one.entry.type === 'job.opened' && session.snapshot().state.practice !== null

/**
 * Words that were asked for or refuse something, verdicts, the leave to go in with its end, what is asked or amiss of readings, what practice
 * shows and says of an answer, and the briefing of a scenario.
 */
function isToRead(session: Session, one: Shown, style: SheetStyle): boolean {
  if (one.kind === 'said' || isBriefing(session, one)) return true
  const { entry, state } = one
  if (TO_READ.includes(entry.type) || entry.type.startsWith('practice.')) return true
  if (MAY_WARN.includes(entry.type) && warns(entryBlocks(session.defsAt(entry), state, entry, style)))
    return true
  return state.practice !== null && lessonBlock(session.defsAt(entry), state, entry) !== null
}

const TO_READ: readonly string[] = ['verdict.given', 'readings.questioned', 'gate.opened']
const MAY_WARN: readonly string[] = ['reading.taken', 'reading.corrected', 'doubt.settled']

const warns = (blocks: readonly Block[]) =>
  blocks.some(({ rows }) => rows.some(({ tone }) => tone === 'caution'))

/** What is wrong with the line that was just keyed stays in sight: nobody goes on past it. */
function isMarkedWrong(session: Session, one: Shown): boolean {
  if (one.kind !== 'entry' || one.state.practice === null) return false
  const lesson = lessonOn(session.defsAt(one.entry), one.state, one.entry)
  return lesson?.marks.some(({ isRight }) => !isRight) === true
}

const isAsking = (one: Shown) => one.kind === 'entry' && one.entry.type === 'practice.asked'

const isRefusal = (one: Shown) => one.kind === 'said' && one.refusal

type ShownEntry = Extract<Shown, { kind: 'entry' }>

function linesOf(
  session: Session,
  item: Shown | typeof EARLIER,
  skipped: number,
  style: SheetStyle,
  columns: number,
): Line[] {
  if (item === EARLIER) {
    if (skipped === 0) return []
    return layOut(
      { margin: '', rows: [row(`${skipped} earlier entries are in the log: barover show.`, 'faint')] },
      style,
    )
  }
  if (item.kind === 'said') return saidLines(item, style, columns)
  const own = entryBlocks(session.defsAt(item.entry), item.state, item.entry, style)
  const before = verdictBefore(session, item)
  const old =
    before === undefined ? [] : entryBlocks(session.defsAt(before.entry), before.state, before.entry, style)
  const blocks = markedVoid(toldShort(own, old), item.entry, session.snapshot().state)
  return blocks.flatMap((block) => layOut(block, style))
}

/** The verdict of the same step that stands on this sheet above. */
function verdictBefore(session: Session, { entry, key }: ShownEntry): ShownEntry | undefined {
  if (entry.type !== 'verdict.given') return undefined
  return session
    .snapshot()
    .shown.findLast(
      (one): one is ShownEntry =>
        one.kind === 'entry' &&
        one.key < key &&
        one.entry.type === 'verdict.given' &&
        one.entry.step === entry.step,
    )
}

/** What to do to be safe is read on any terminal, also on one too narrow for a sheet. */
function saidLines(
  { lines, refusal }: Extract<Shown, { kind: 'said' }>,
  style: SheetStyle,
  columns: number,
): Line[] {
  // Two words of a list in one row break in the middle of one where a row is short.
  const told = columns < TWO_IN_A_ROW ? lines.flatMap(helpInLines) : lines
  return layOut(saidBlock(told, refusal), { ...style, width: Math.min(style.width, columns - 1) })
}

const TWO_IN_A_ROW = 76

/** Time acts while the prompt waits: at the next minute, and at the very moment a gas test lapses. */
function useTicks(session: Session, end: (how: Error) => void): void {
  const snapshot = useSyncExternalStore(session.subscribe, session.snapshot)
  useEffect(() => {
    const wait = nextChangeMs(session.engine.defs, snapshot.state, snapshot.now)
    if (wait === null) return
    const timer = setTimeout(() => {
      session.tick().catch((error: unknown) => end(error instanceof Error ? error : new Error(String(error))))
    }, wait + 20)
    return () => clearTimeout(timer)
  }, [session, snapshot, end])
}

/** Other jobs on the machine are looked at while the prompt waits, whether anything of this one runs out or not. */
function useLooks(session: Session, end: (how: Error) => void): void {
  useEffect(() => {
    const timer = setInterval(() => {
      session.look().catch((error: unknown) => end(error instanceof Error ? error : new Error(String(error))))
    }, LOOK_MS)
    return () => clearInterval(timer)
  }, [session, end])
}
