// How it stands, asked at a review: whether the job is closed, what is still on the machine, and by whose word it runs and until when.
// From entries of the log; that it may run is never said.
import { stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { nonconformances } from '../job/nonconformance.ts'
import { openThings, thingText } from '../job/register.ts'
import type { State } from '../job/state.ts'
import { validityText } from '../job/validity.ts'
import { type Block, row } from '../sheet/block.ts'
import { nonconformanceText } from '../talk/names.ts'
import { whyOpenTold } from './asked-acts.ts'
import { asItem, heading, type OnRecord, said } from './asked-entries.ts'
import { howDecided, RUNS_ON } from './decided.ts'
import { clause, named, when } from './look.ts'

export function isClosedTold(record: OnRecord): Block[] {
  const told = whyOpenTold(record)
  return record.state.closed === null ? [heading('It is not closed'), ...told] : told
}

/** By the record alone: it sees no machine. */
export function stillOnTold({ state, review }: OnRecord): Block[] {
  const items = review.exceptions.filter(({ kind }) => kind === 'hanging' || kind === 'hung')
  return [
    heading('What is on the machine no record tells. What this one does not tell off'),
    ...(items.length === 0
      ? [said('No lock, blind or tag that was keyed on stands as still on.')]
      : items.map(asItem)),
    said(placedText(state), 'Somebody has to look: what nobody keyed on is in no log.'),
  ]
}

/** By the register alone. */
export function placedText(state: State): string {
  const open = openThings(state)
  return open.length === 0
    ? 'Of what was placed by the register, nothing is open.'
    : `Placed and not accounted for: ${open.map((thing) => thingText(thing)).join('; ')}.`
}

type Decision = Extract<Entry, { type: 'disposition.set' }>

/** Each standing decision by which a part goes on as it is: whose it is, on whose authority, until when, and in which words. */
export function byWhoseWordTold(record: OnRecord): Block[] {
  const { defs, state, entries, review } = record
  const ncs = nonconformances(defs, state)
  const stands = (d: Decision) =>
    Object.values(state.dispositions).some(({ seq, void: isVoid }) => seq === d.seq && !isVoid)
  const set = entries.filter(
    (e): e is Decision =>
      e.type === 'disposition.set' &&
      RUNS_ON.includes(e.choice) &&
      stands(e) &&
      // What conforms runs on nobody's word.
      (e.choice === 'concession' || ncs.some(({ decided }) => decided?.seq === e.seq)),
  )
  const permits = entries.filter((e) => e.type === 'deviation.permitted')
  const deadlines = review.exceptions.filter(({ kind }) => kind === 'deadline')
  const open = review.exceptions.filter((one) => one.open)
  return [
    heading('Whether it may run no record tells. By whose word what goes on as it is, and until when'),
    ...(open.length === 0 ? [] : [said('Open by this record, and before any hours:'), ...open.map(asItem)]),
    ...(set.length === 0
      ? [
          said(
            'No decision that stands lets a part go on as it was found: none concedes, and none accepts what does not conform or has to be watched.',
          ),
        ]
      : []),
    ...set.map((d): Block => {
      const nc = ncs.findLast(({ step, seq }) => step === d.about && seq < d.seq)
      const about = nc === undefined ? named(stepById(defs, d.about)) : nonconformanceText(defs, nc)
      return {
        margin: '',
        rows: [
          row(
            `${about}: ${d.choice}, by ${d.person}${howDecided({ entries }, d)} ${when({ entries }, d)} (entry ${d.seq})`,
            'strong',
          ),
          row(`  ${endsText(d)}`),
          row(`  Its words: ${clause(d.why)}.`),
        ],
      }
    }),
    ...permits.flatMap((d) =>
      d.type === 'deviation.permitted'
        ? [
            said(
              `${named(stepById(defs, d.step))}, deviation permitted by ${d.person} ${when({ entries }, d)} (entry ${d.seq}): ${clause(d.what)}. ${endsText(d)}`,
            ),
          ]
        : [],
    ),
    ...deadlines.map(asItem),
    said(
      'What was told of danger, and what hangs: is it safe to run.',
      'Whether it runs, a lead decides at the machine, by permit and the maker’s manual.',
    ),
  ]
}

function endsText({ authority, valid }: Pick<Decision, 'authority' | 'valid'>): string {
  const whose =
    authority === undefined ? 'No authority beside that lead is keyed' : `On the authority of ${authority}`
  return `${whose}; ${valid === undefined ? 'no end is keyed beside its words' : validityText(valid)}.`
}
