// The same job as plain lines, for pipes, files, terminals that cannot draw, and people who listen to the screen.
// Nothing is ever drawn over: what was printed stands.
import type { Session, Shown, Snapshot } from '../app/session.ts'
import { within } from '../app/within.ts'
import { layOut, plainText, row, type SheetStyle } from '../core/sheet/block.ts'
import { foot } from '../core/sheet/foot.ts'
import { promptView } from '../core/sheet/prompt-view.ts'
import { entryBlocks, saidBlock } from '../core/sheet/shown-block.ts'
import { isHidden } from '../core/talk/ask.ts'
import { LISTED } from '../core/talk/correct.ts'
import { isMakeSafe, isStop } from '../core/talk/words.ts'

export interface PlainOut {
  readonly write: (text: string) => void
}

export function printShown(
  session: Session,
  shown: readonly Shown[],
  style: SheetStyle,
  out: PlainOut,
): void {
  for (const one of shown) {
    const blocks =
      one.kind === 'said'
        ? [saidBlock(one.lines, one.refusal)]
        : entryBlocks(session.defsAt(one.entry), one.state, one.entry, style)
    for (const block of blocks) out.write(`${plainText(layOut(block, style))}\n`)
  }
}

/** The prompt in full: what is asked, its hazard, how, where, and the foot of the sheet. */
export function printPrompt(session: Session, style: SheetStyle, out: PlainOut): void {
  const { state, talk, now } = session.snapshot()
  const view = promptView(session.engine.defs, state, talk, style)
  const below = foot(session.engine.defs, state, now)
  const warning = below.warning === null ? [] : [row(below.warning, 'caution')]
  const rows = [
    row(view.title, 'strong'),
    ...view.must,
    ...warning,
    ...view.rows,
    ...(view.drawings[0] ?? []),
    ...view.legend,
    ...(view.profiles[0] ?? []),
    ...view.choices.slice(0, LISTED),
    ...view.ask,
    row(`${below.text}   Words: safe, stop, help`, 'faint'),
  ]
  out.write(
    `\n${plainText(layOut({ margin: view.margin, rows: rows.filter((r) => r.text !== '') }, style))}\n`,
  )
}

/** What was answered, as it was keyed, with its unit in the margin. */
export function printAnswer(line: string, session: Session, style: SheetStyle, out: PlainOut): void {
  const { state, talk } = session.snapshot()
  const { unit, secrecy } = promptView(session.engine.defs, state, talk, style)
  const shown = line === '' ? '(Enter)' : isHidden(secrecy, line) && !isStop(line) ? '(not shown)' : line
  out.write(`${plainText(layOut({ margin: unit, rows: [row(shown)] }, style))}\n`)
}

export interface PlainRun {
  readonly style: SheetStyle
  readonly out: PlainOut
  /** Print each prompt in full; answers read from a file leave it to the transcript. */
  readonly prompts: boolean
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
  let printed = 0
  const catchUp = (): void => {
    const { shown } = session.snapshot()
    printShown(session, shown.slice(printed), style, out)
    printed = shown.length
  }
  catchUp()
  const isOver = () => session.snapshot().state.closed !== null || session.snapshot().state.left
  if (isOver()) return
  if (run.prompts) printPrompt(session, style, out)
  const watch = run.prompts
    ? setInterval(() => void waiting(session, run, catchUp, () => printed).catch(() => undefined), LOOK_MS)
    : null
  try {
    for await (const line of lines) {
      if (isMakeSafe(line)) {
        // Before anything that could be waited for.
        session.makeSafe()
        catchUp()
        if (run.prompts) printPrompt(session, style, out)
        continue
      }
      await session.tick()
      catchUp()
      if (run.prompts) printAnswer(line, session, style, out)
      const before = session.snapshot()
      await session.hear(line)
      await within(session.settled(), run.patienceMs)
      catchUp()
      if (run.where !== undefined && wasNotTaken(before, session.snapshot()))
        out.write(
          `${plainText(layOut({ margin: '', rows: [row(`${run.where()} was not taken.`)] }, style))}\n`,
        )
      if (isOver()) return
      if (run.prompts) printPrompt(session, style, out)
    }
  } finally {
    if (watch !== null) clearInterval(watch)
  }
  await session.tick()
  catchUp()
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

/** What time has done since: a warning once before a gas test lapses, and what fell when it did. */
async function waiting(
  session: Session,
  run: PlainRun,
  catchUp: () => void,
  printed: () => number,
): Promise<void> {
  const before = session.snapshot()
  await session.tick()
  const after = session.snapshot()
  const { defs } = session.engine
  const soon = foot(defs, after.state, after.now).warning
  if (soon !== null && foot(defs, before.state, before.now).warning === null)
    run.out.write(`${plainText(layOut({ margin: '', rows: [row(soon, 'caution')] }, run.style))}\n`)
  if (after.shown.length === printed()) return
  catchUp()
  printPrompt(session, run.style, run.out)
}
