// The same job without a drawing, for pipes, files, terminals that cannot draw, and people who listen to the screen. Nothing is ever
// drawn over: what was printed stands.
import type { Session, Shown, Snapshot } from '../app/session.ts'
import { within } from '../app/within.ts'
import { row, type SheetStyle } from '../core/sheet/block.ts'
import { blockText } from '../core/sheet/linear.ts'
import { promptView } from '../core/sheet/prompt-view.ts'
import { entryBlocks, saidBlock } from '../core/sheet/shown-block.ts'
import { isHidden } from '../core/talk/ask.ts'
import { isMakeSafe, isStop, wordIn } from '../core/talk/words.ts'
import { createTeller, type PlainOut } from './tell.ts'

export interface PlainRun {
  /** Linear for people: a style that is ruled makes a log of it. */
  readonly style: SheetStyle
  readonly out: PlainOut
  /** Say what is asked; answers read from a file leave it to the transcript. */
  readonly prompts: boolean
  /** The terminal shows by itself what is keyed; elsewhere a line that puts nothing on record is told. */
  readonly echoed?: boolean
  /** Said before the first question. */
  readonly notice?: string
  /** Where the answer just given stands, said when it was not taken. */
  readonly where?: () => string
  /** How long to wait for a file that is looked for or copied before the next line is heard; without it, until it is done. */
  readonly patienceMs?: number
}

/** Time acts while a prompt waits, on plain lines too: how often it is looked at. */
const LOOK_MS = 1000

/** Prints what came since, hears the lines one by one until they end or the job does. */
export async function runPlain(session: Session, lines: AsyncIterable<string>, run: PlainRun): Promise<void> {
  const { style, out } = run
  const teller = createTeller(session, style, out)
  let printed = 0
  let isHearing = false
  const catchUp = (): void => {
    const { shown } = session.snapshot()
    const fresh = shown.slice(printed)
    printed = shown.length
    if (style.linear === true) teller.shown(fresh)
    else printBlocks(session, fresh, style, out)
  }
  /** Whether anything was said. */
  const waited = async (): Promise<void> => {
    if (isHearing) return
    await session.tick()
    // A line came meanwhile: what it brings is said with it, and once.
    if (isHearing) return
    const isNews = session.snapshot().shown.length > printed
    catchUp()
    if (teller.time() || isNews) teller.prompt()
  }
  if (style.linear === true && run.prompts) {
    const { shown } = session.snapshot()
    printed = shown.length
    teller.takenUp(shown)
  } else catchUp()
  const isOver = () => session.snapshot().state.closed !== null || session.snapshot().state.left
  if (isOver()) return
  if (run.notice !== undefined) out.write(`${run.notice}\n`)
  if (run.prompts) teller.prompt()
  const watch = run.prompts ? setInterval(() => void waited().catch(() => undefined), LOOK_MS) : null
  try {
    for await (const line of lines) {
      isHearing = true
      if (isMakeSafe(line)) {
        // Before anything that could be waited for.
        session.makeSafe()
        catchUp()
        if (run.prompts) teller.prompt(true)
        isHearing = false
        continue
      }
      await session.tick()
      catchUp()
      const before = session.snapshot()
      const keyed = keyedText(session, line, style)
      await session.hear(line)
      await within(session.settled(), run.patienceMs)
      const after = session.snapshot()
      if (run.prompts && run.echoed !== true && after.state.seq === before.state.seq)
        out.write(`Keyed: ${keyed}\n`)
      catchUp()
      if (run.where !== undefined && wasNotTaken(before, after))
        out.write(`${blockText({ margin: '', rows: [row(`${run.where()} was not taken.`)] }, style)}\n`)
      if (isOver()) return
      if (run.prompts) teller.prompt(wordIn(line) === 'where')
      isHearing = false
    }
  } finally {
    if (watch !== null) clearInterval(watch)
  }
  await session.tick()
  catchUp()
}

/** As entries stand on a ruled sheet: a log of the job, and no conversation. */
function printBlocks(session: Session, shown: readonly Shown[], style: SheetStyle, out: PlainOut): void {
  for (const one of shown) {
    const blocks =
      one.kind === 'said'
        ? [saidBlock(one.lines, one.refusal)]
        : entryBlocks(session.defsAt(one.entry), one.state, one.entry, style)
    for (const block of blocks) out.write(`${blockText(block, style)}\n`)
  }
}

/** The line as it may be seen. */
function keyedText(session: Session, line: string, style: SheetStyle): string {
  const { state, talk } = session.snapshot()
  const { secrecy } = promptView(session.engine.defs, state, talk, style)
  if (line === '') return 'Enter'
  return isHidden(secrecy, line) && !isStop(line) ? 'not shown' : line
}

/** Nothing went on record, no question was opened or closed, and something was said about it. */
function wasNotTaken(before: Snapshot, after: Snapshot): boolean {
  const last = after.shown[after.shown.length - 1]
  return (
    after.state.seq === before.state.seq &&
    after.talk.ask === before.talk.ask &&
    last?.kind === 'said' &&
    last.refusal
  )
}
