// The register at the end of a sheet: a line for everything that a step puts in, and free ones. Whatever is written there is in the
// machine, and so is what a step puts in where its line is blank. That it came out again is only ever what the sheet says: two
// signatures are asked for that, and initials on paper are none.
import type { Definitions, PlacedStep } from './definitions.ts'
import type { Entry } from './entries.ts'
import { type PaperState, rowKey, rowOf, type SheetRow } from './paper.ts'
import type { SheetBox } from './paper-rows.ts'
import { placesOfStep, type Thing } from './register.ts'
import type { State } from './state.ts'

const REGISTER = 'register'
const TITLE = 'Register of what is temporary'
const SUFFIXES = ['', '.out', '.and'] as const

/** Everything that these steps put in, under the ids of the register. */
function declared(steps: readonly PlacedStep[]): { id: string; what: string }[] {
  return steps.flatMap((placed) =>
    placesOfStep(placed.step).map(({ id, what }) => ({
      id: placed.scope + id,
      what: `${what} (step ${placed.number})`,
    })),
  )
}

/** The next box of the register that is not keyed; `asked`: the steps that are called for, or may be. */
export function registerBox(asked: readonly PlacedStep[], paper: PaperState): SheetBox | null {
  for (const { id, what } of declared(asked)) {
    const open = openBox(paper, id, what)
    if (open !== null) return open
  }
  for (let n = 1; ; n++) {
    const open = openBox(paper, String(n), null)
    if (open !== null) return open
    if (rowOf(paper, null, `${REGISTER}.${n}`)?.text === null) return null
  }
}

function openBox(paper: PaperState, id: string, what: string | null): SheetBox | null {
  const line = rowOf(paper, null, `${REGISTER}.${id}`)
  if (line === undefined) return boxOf(id, '', what)
  if (line.text === null) return null
  const suffix = SUFFIXES.find((one) => rowOf(paper, null, `${REGISTER}.${id}${one}`) === undefined)
  return suffix === undefined ? null : boxOf(id, suffix, what ?? line.text)
}

function boxOf(id: string, suffix: (typeof SUFFIXES)[number], what: string | null): SheetBox {
  const base = { placed: null, row: `${REGISTER}.${id}${suffix}` }
  const name = what === null ? TITLE : `${TITLE}: ${what}`
  if (suffix === '.out') return { ...base, takes: 'line', label: `${name}, out` }
  if (suffix === '.and') return { ...base, takes: 'line', label: `${name}, out, and by` }
  return {
    ...base,
    takes: 'thing',
    label: name,
    how: 'When it was placed and by whom, then what and where: 07:10 RO head end; - where the line is blank',
    ...(what === null ? {} : { what }),
  }
}

/** The box of a row of the register, so that it can be keyed anew; null where it is none. */
export function registerBoxAt(defs: Definitions, row: string): SheetBox | null {
  const found = /^register\.([^.]+)(\.out|\.and|)$/.exec(row)
  if (found === null) return null
  const [, id = '', suffix = ''] = found
  const what = declared(defs.steps).find((one) => one.id === id)?.what ?? null
  return boxOf(id, suffix as (typeof SUFFIXES)[number], what)
}

/** What a line of it says, also one that is blank: a step that puts something in has put it in. Null: the list ends there. */
export function thingSays(box: SheetBox, rest: string | null): string | null {
  if (box.what === undefined) return rest === '' ? 'something, and what does not stand there' : rest
  return rest === null
    ? `${box.what}, its line BLANK on the sheet`
    : [box.what, rest].filter(Boolean).join(', ')
}

/** The register after a box of it was keyed. */
export function thingsAfter(state: State, entry: Entry): readonly Thing[] {
  if (entry.type !== 'paper.row' || entry.step !== null) return state.things
  const id = /^register\.([^.]+)$/.exec(entry.row)?.[1]
  if (id === undefined) return state.things
  const before = state.paper?.rows[rowKey(null, entry.row)]?.seq
  const others = state.things.filter(({ seq }) => seq !== before)
  if (entry.says === null) return others
  const thing: Thing = {
    seq: entry.seq,
    by: entry.paper.who,
    what: entry.says,
    where: 'by a sheet',
    number: null,
    place: /^\d+$/.test(id) ? null : id,
    step: null,
    seenBy: null,
    accountedBy: null,
    handedOnBy: null,
  }
  return [...others, thing]
}

/** Whether the box says that something came out, whoever wrote it. */
export function saysOut({ row, says, paper }: Extract<Entry, { type: 'paper.row' }>): boolean {
  return (
    /^register\.[^.]+\.(?:out|and)$/.test(row) && (says !== null || paper.time !== null || paper.who !== null)
  )
}

/** What the sheet says of its coming out, a sentence. */
export function outOnSheet(paper: PaperState, thing: Thing): string {
  const line = Object.values(paper.rows).find(({ seq }) => seq === thing.seq)
  const written = SUFFIXES.slice(1).flatMap((suffix): SheetRow[] => {
    const row = line === undefined ? undefined : rowOf(paper, null, `${line.row}${suffix}`)
    return row === undefined || (row.time === null && row.who === null && row.text === null) ? [] : [row]
  })
  if (written.length === 0) return 'The sheet does not say that it came out.'
  const who = written.map(({ time, who: by, text }) =>
    [time, by ?? 'no initials', text].filter(Boolean).join(' '),
  )
  return `Out by the sheet: ${who.join(', and ')}. Initials on paper are no signature, so it counts as still there.`
}
