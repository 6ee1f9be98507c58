// Verdicts that are not ACCEPT and findings that do not conform, each with what was decided about it.
import type { Entry } from '../../job/entries.ts'
import { fellWhen } from '../../job/fell-with.ts'
import { fateOf, type Nonconformance, nonconformances } from '../../job/nonconformance.ts'
import { validityText } from '../../job/validity.ts'
import { VERDICT_WORDS, type VerdictWord } from '../../metrology/verdict.ts'
import { becauseRows } from '../../sheet/verdict-block.ts'
import { nonconformanceText, wordOf } from '../../talk/names.ts'
import { madeOther, madeOtherText } from '../became.ts'
import { answerTo, decidedText, howDecided } from '../decided.ts'
import type { Found } from '../exception.ts'
import { isWatched, judgedIn, shareText } from '../judged.ts'
import { entriesOf, type Look, sentence, when } from '../look.ts'

export function nonconforming(look: Look): Found[] {
  return [...fallen(look), ...nonconformances(look.defs, look.state).map((nc) => one(look, nc))]
}

/** A job whose outcome fell after it was closed reads as another in whatever was printed of it before. */
function fallen({ state }: Look): Found[] {
  if (state.fellFrom === null) return []
  return [
    {
      kind: 'verdict',
      what: `Closed with ${state.fellFrom}, FALLEN to ${state.closed} since: ${state.fellBy.join(', ')} out of calibration`,
      sentences: ['What was read with it, and every verdict that rests on that, counts for nothing.'],
      entries: state.fellBy.flatMap((id) => state.doubted[id] ?? []),
      open: true,
      grave: -1,
    },
  ]
}

function one(look: Look, nc: Nonconformance): Found {
  const { defs, state } = look
  const entry = look.entries[nc.seq]
  const judged = entry?.type === 'verdict.given'
  const decisions = entriesOf(look, 'disposition.set').filter((d) => d.about === nc.step && d.seq > nc.seq)
  const countersigned = entriesOf(look, 'disposition.countersigned').filter((c) =>
    decisions.some((d) => d.step === c.step && d.seq < c.seq),
  )
  const { decided } = nc
  const voidBy = state.raised.find((r) => r.seq === nc.seq)?.voidBy ?? null
  const fate = fateOf(state, nc)
  const followed = followedBy(look, nc)
  const next = nc.stands
    ? null
    : (state.raised.find((r) => r.step === nc.step && r.seq > nc.seq)?.seq ?? null)
  const made = nc.stands ? [] : madeOther(look, nc.step, nc.seq, next)
  const because = nc.stands ? null : madeOtherText(look, nc.step, nc.seq, next)
  const became = because === null ? [] : [because]
  const standing = !nc.stands
    ? followed === null
      ? `void since${fate?.now == null ? '' : `, ${fate.now} now`}`
      : `${followed.name} ${wordOf(defs, followed.step, followed.word)} stands in its place`
    : decided === null
      ? 'NOT DECIDED'
      : decidedText(decided)
  return {
    kind: judged ? 'verdict' : 'finding',
    what: `${nonconformanceText(defs, nc)}; ${standing}`,
    // What another stands in the place of is told in one line: the entries behind its number have the rest.
    sentences:
      followed !== null
        ? [replacedText(look, decisions, followed), ...became]
        : [
            ...(judged
              ? [
                  ...becauseRows(look.defsAt(entry), entry.verdict).map(({ text }) => sentence(text.trim())),
                  ...watched(look, entry),
                ]
              : noteOf(entry)),
            ...decisions
              .map((d, n) =>
                sentence(
                  `${headOf(look, d, n === decisions.length - 1)}: ${d.choice}, by ${d.person}${howDecided(look, d)} ${when(look, d)}: ${d.why}`,
                ),
              )
              .reverse(),
            ...decisions.flatMap((d) =>
              d.authority === undefined || d.valid === undefined
                ? []
                : [`On the authority of ${d.authority}, ${validityText(d.valid)}.`],
            ),
            ...(fate === null
              ? []
              : [
                  `It fell ${fellWhen(defs, nc.step, fate.fellWith).replace(/,$/, '')}; no decision is due on it.`,
                  ...became,
                ]),
            ...(nc.stands && decided === null
              ? [
                  `No decision stands about it${state.closed === null ? ': it is asked where the job is taken up, at its decide step' : ', and a closed job takes none'}.`,
                ]
              : []),
          ],
    entries: [
      nc.seq,
      ...decisions.map((d) => d.seq),
      ...countersigned.map((c) => c.seq),
      ...(voidBy === null ? [] : [voidBy]),
      ...made.map(({ seq }) => seq),
    ],
    // A lead who decides to hold has put it off.
    open: nc.stands && (decided === null || decided.choice === 'hold'),
    grave: graveOf(nc, judged),
  }
}

/** Of each figure that only has to be watched: value, limit, share used, and the share from which it is. */
function watched(look: Look, entry: Extract<Entry, { type: 'verdict.given' }>): string[] {
  return judgedIn(entry.verdict)
    .filter(isWatched)
    .map((one) => `To be watched, ${one.name}: ${shareText(look.defsAt(entry), one)}.`)
}

/** The last that stands of the same step, raised since; null where nothing does. */
function followedBy({ defs, state }: Look, nc: Nonconformance): Nonconformance | null {
  if (nc.stands) return null
  return (
    nonconformances(defs, state).findLast(
      ({ step, stands, seq }) => stands && step === nc.step && seq > nc.seq,
    ) ?? null
  )
}

/** `REWORK of KH 09:09 was replaced by replace of KH 10:02 (NC-2): bored too far.` */
function replacedText(
  look: Look,
  was: readonly Extract<Entry, { type: 'disposition.set' }>[],
  { name, decided }: Nonconformance,
): string {
  const old = was.filter(({ seq }) => decided === null || seq < decided.seq).at(-1)
  const before =
    old === undefined
      ? 'Nothing was decided on it'
      : `${old.choice}, decided by ${old.person} ${when(look, old)}`
  const entry = decided === null ? undefined : look.entries[decided.seq]
  const now =
    decided === null || entry === undefined
      ? `on ${name} NOTHING IS DECIDED`
      : `${decided.choice}, decided by ${decided.person} ${when(look, entry)} on ${name}`
  return sentence(old === undefined ? `${before}; ${now}` : `${before}, was replaced by: ${now}`)
}

/** A word by radio that the lead says was never spoken is no decision, whatever was keyed as one. */
function headOf(look: Look, d: Extract<Entry, { type: 'disposition.set' }>, isLast: boolean): string {
  const answer = answerTo(look, d)
  if (d.radio !== undefined && answer?.agrees === false)
    return `NO DECISION, ${answer.person} says it was not said by radio; keyed as`
  return isLast ? 'A lead’s decision, no verdict' : 'Decided before that, and replaced by it'
}

/** Also with one that fell since: it was said of what was seen then. */
function noteOf(entry: Entry | undefined): string[] {
  return entry !== undefined && 'note' in entry && entry.note !== undefined
    ? [sentence(`Noted with it: ${entry.note}`)]
    : []
}

/** What stands before what is void, the undecided first, then by the word of the verdict. */
function graveOf(nc: Nonconformance, judged: boolean): number {
  if (!nc.stands) return 30
  const word = judged ? VERDICT_WORDS.length - VERDICT_WORDS.indexOf(nc.word as VerdictWord) : 0
  return (nc.decided === null ? 0 : 10) + word
}
