// A live job written down on its blank sheet as a crew without a screen would have written it, and that sheet keyed in: every line from
// what the live log holds, so that the two can be held against each other.

import { findingOffers } from '../../src/core/job/admit-disposition.ts'
import type { Entry } from '../../src/core/job/entries.ts'
import { fold, opening } from '../../src/core/job/fold.ts'
import type { SheetBox } from '../../src/core/job/paper-rows.ts'
import { type Given, type Reading, type State, stands } from '../../src/core/job/state.ts'
import { offersAt, verdictAt } from '../../src/core/talk/offered.ts'
import { Walk } from './example.ts'

/** What was on a page of a hold point whenever it was complete, and when people were out before the next. */
interface Page {
  readonly given: Readonly<Record<string, Given>>
  readonly at: string
  readonly by: string
  clear: Extract<Entry, { type: 'people.clear' }> | null
}

interface Live {
  readonly state: State
  readonly entries: readonly Entry[]
  readonly pages: Readonly<Record<string, Page[]>>
}

function liveOf({ entries }: Walk): Live {
  const [first, ...rest] = entries
  if (first?.type !== 'job.opened') throw new Error('not opened')
  let state = opening(first)
  const pages: Record<string, Page[]> = {}
  for (const entry of rest) {
    state = fold(state, entry)
    if (entry.type === 'gate.opened') {
      const given = state.gates[entry.step]?.given ?? {}
      const of = pages[entry.step] ?? []
      of.push({ given, at: entry.at, by: entry.by ?? 'RO', clear: null })
      pages[entry.step] = of
    }
    if (entry.type !== 'people.clear') continue
    const last = pages[entry.step]?.at(-1)
    if (last !== undefined) last.clear = entry
  }
  return { state, entries, pages }
}

const time = (at: string) => `${at.slice(0, 10)} ${at.slice(11, 16)}`
const beside = ({ at, by }: { readonly at: string; readonly by?: string | null | undefined }) =>
  `${time(at)} ${by ?? '-'}`

/** Keys what the live job holds, box by box, then decides and signs as it was decided and signed. */
export function transcribed(
  live: Walk,
  leads: { readonly decides: string; readonly compares: string },
): Walk {
  const from = liveOf(live)
  const walk = new Walk(live.engine.defs, 'EXAMPLE', { paper: true })
  walk.autoPin = true
  walk.pinsAreRight = true
  walk.now = { ...live.now, ms: live.now.ms + 24 * 3_600_000 }
  walk.stepMs = 1000
  walk.keys(from.state.everOn[0] ?? 'RO')
  for (let n = 0; n < 20_000 && walk.state.closed === null; n++) {
    const before = walk.entries.length
    step(walk, from, leads)
    if (walk.talk.ask?.kind === 'sheet-sure') walk.keys('2')
    if (walk.entries.length === before)
      throw new Error(
        `${JSON.stringify(walk.prompt).slice(0, 300)}: ${walk.said.slice(-3).join(' ')} ${JSON.stringify(walk.talk).slice(0, 200)}`,
      )
  }
  return walk
}

function step(walk: Walk, live: Live, leads: { readonly decides: string; readonly compares: string }): void {
  const { prompt } = walk
  switch (prompt.kind) {
    case 'sheet':
      walk.keys(lineOf(walk, live, prompt.box))
      return
    case 'sheet-doubt':
      walk.keys('2')
      return
    case 'decide': {
      const was = live.state.dispositions[prompt.step.id]
      const offers = offersAt(walk.state, prompt.step)
      decide(
        walk,
        offers.map(({ choice }) => choice),
        was,
        leads.decides,
      )
      return
    }
    case 'findings': {
      const [one] = prompt.open
      if (one === undefined) throw new Error('no finding')
      const was = Object.values(live.state.dispositions).find((d) => d.about === one.step && !d.void)
      walk.keys('1')
      decide(
        walk,
        findingOffers(null).map(({ choice }) => choice),
        was,
        leads.decides,
      )
      return
    }
    case 'sheet-sign':
      walk.keys(prompt.as === 'keyed' ? (walk.state.doer ?? 'RO') : leads.compares)
      return
    default:
      throw new Error(`nothing to do at ${prompt.kind}`)
  }
}

function decide(
  walk: Walk,
  choices: readonly string[],
  was: { readonly choice: string; readonly why: string } | undefined,
  lead: string,
): void {
  if (was === undefined) throw new Error('it was never decided live')
  // A test over time whose minutes do not tell that it lasted is HOLD on paper: what a lead accepted live is not open then.
  const is = walk.prompt.kind === 'decide' ? verdictAt(walk.state, walk.prompt.step) : ''
  const choice = is === 'HOLD' && was.choice === 'accept' ? 'hold' : was.choice
  walk.keys(String(choices.indexOf(choice) + 1), lead, was.why)
  if (walk.talk.ask?.kind === 'concession-authority') walk.keys('paper no. 7', '2027-01-01')
}

function lineOf(walk: Walk, live: Live, { placed, row, takes, item }: SheetBox): string {
  const { state, entries } = live
  if (placed === null) return frontOrEnd(walk, live, row)
  const [key = '', copy = '1'] = row.split('#')
  if (placed.step.kind === 'gate') return permitLine(live, placed.id, Number(copy), key, item?.evidence.kind)
  if (row === 'done' && takes === 'seen') return seenLine(live, placed.id, placed.step)
  if (row === 'done') {
    const done = entries.findLast(
      (e) => (e.type === 'step.done' || e.type === 'step.confirmed') && e.step === placed.id,
    )
    return done === undefined ? '-' : beside(done)
  }
  if (row === 'point') {
    const signed = entries.findLast((e) => e.type === 'point.signed' && e.step === placed.id)
    return signed?.type === 'point.signed' ? `${time(signed.at)} ${signed.person} ${signed.person}` : '-'
  }
  if (row === 'instrument') return readingsOf(state, `${placed.id}.`)[0]?.instrument ?? '-'
  if (row === 'verdict') {
    const given = entries.findLast((e) => e.type === 'verdict.given' && e.step === placed.id)
    const word = state.verdicts[placed.id]?.verdict.result.verdict
    return given === undefined || word === undefined ? '-' : `${beside(given)} ${word}`
  }
  if (row === 'decision') {
    const set = state.dispositions[placed.id]
    const at = entries.findLast((e) => e.type === 'disposition.set' && e.step === placed.id)
    return set === undefined || set.void || at === undefined
      ? '-'
      : `${time(at.at)} ${set.person} ${set.choice}`
  }
  const readings = (state.readings[row] ?? []).filter(stands)
  const [first] = readings
  if (first === undefined) return '-'
  if (takes === 'place') return beside(first)
  const next = readings[(walk.state.readings[row] ?? []).filter(stands).length]
  return next === undefined ? '-' : `${next.value} ${next.unit}`
}

function readingsOf({ readings }: State, begins: string): Reading[] {
  return Object.entries(readings)
    .filter(([key]) => key.startsWith(begins))
    .flatMap(([, all]) => all.filter(stands))
}

function seenLine(
  { entries }: Live,
  id: string,
  step: { readonly kind: string; readonly conditions?: readonly { readonly id: string }[] },
): string {
  const seen = entries.findLast((e) => e.type === 'finding.observed' && e.step === id)
  if (seen?.type !== 'finding.observed') return '-'
  const all = [seen.condition, ...(seen.also ?? [])].map(
    (one) => (step.conditions ?? []).findIndex((c) => c.id === one) + 1,
  )
  return `${beside(seen)} ${all.join(',')}${seen.note === undefined ? '' : ` ${seen.note}`}`
}

function permitLine(live: Live, step: string, copy: number, key: string, kind: string | undefined): string {
  const pages = live.pages[step] ?? []
  const page = pages[copy - 1]
  if (key === 'copy') return copy < pages.length ? '1' : '-'
  if (page === undefined) return '-'
  if (key === '.complete') return `${time(page.at)} ${page.by} -`
  if (key === '.clear')
    return copy < pages.length && page.clear !== null ? `${beside(page.clear)} ${page.clear.words}` : '-'
  const isBegun = key.endsWith('.begun')
  const given = page.given[isBegun ? key.slice(0, -'.begun'.length) : key]
  if (given === undefined) return '-'
  if (isBegun) {
    const item = key.slice(0, -'.begun'.length)
    const begun = live.entries.findLast(
      (e) => e.type === 'wait.begun' && e.step === step && e.item === item && e.seq < given.seq,
    )
    return begun?.type === 'wait.begun' ? `${beside(begun)} ${begun.shown}` : '-'
  }
  if (kind === 'witness') return `${time(given.at)} ${given.person ?? given.by} ${given.person ?? given.by}`
  return `${beside(given)} ${given.shown}${given.instrument === null ? '' : ` ${given.instrument}`}${given.offBy === undefined ? '' : ` ${given.offBy}`}`
}

function frontOrEnd(walk: Walk, { state, entries }: Live, row: string): string {
  const { defs } = walk.engine
  const first = entries[0]?.at ?? ''
  const last = entries.at(-1)?.at ?? ''
  if (row === 'marks') return walk.state.paper?.mark ?? '-'
  if (row === 'order') return 'WO-1'
  if (row === 'day') return first.slice(0, 10)
  if (row === 'begun') return first.slice(11, 16)
  if (row === 'ended') return time(last)
  if (row === 'plate') return `${time(first)} ${state.everOn[0]} ${defs.machine.machine}`
  if (row === 'people') return state.everOn.join(' ')
  if (row.startsWith('seat.')) return state.seats[row.slice(5)] ?? '-'
  if (row === 'worker') return `${time(last)} ${state.everOn[0]} signed`
  if (row === 'lead') return `${time(last)} KH signed`
  const [, id = '', suffix = ''] = /^register\.([^.]+)(\.out|\.and|)$/.exec(row) ?? []
  const thing = state.things.findLast((one) => one.place === id)
  const at = entries.find((e) => e.seq === thing?.seq)
  if (thing === undefined || at === undefined) return '-'
  if (suffix === '') return `${beside(at)} ${thing.where} ${thing.number ?? ''}`.trim()
  const who = thing.accountedBy?.[suffix === '.out' ? 0 : 1]
  return who === undefined ? '-' : `${time(last)} ${who} out`
}
