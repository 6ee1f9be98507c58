// The kit as lines: what stops the job first, then what to bring. And the few lines that stand before a job.
import { a, capital, list } from '../lib/wording.ts'
import type { Numbered, Thing } from './bring.ts'
import type { Kit } from './kit.ts'
import { type KitSeat, type Unfit, unfitText } from './seats.ts'
import { stepsText } from './steps.ts'

/** The whole list. Lines may be long; deeper ones are set in by spaces. */
export function kitLines(kit: Kit): string[] {
  const often = refusedOften(kit.seats)
  return [
    `KIT   ${kit.title}`,
    `${kit.machine}, ${kit.machineTitle}. Calibrations as of ${kit.day}.`,
    ...section('HOLD: NOT TO BE STARTED WITHOUT', kit.holds.map(capital)),
    ...section('A VERDICT THAT CANNOT BE', kit.verdictHolds),
    ...section(
      counted('INSTRUMENTS', kit.seats.length),
      kit.seats.flatMap((seat) => seatLines(seat, often)),
    ),
    ...section('NOT TO BE PICKED ON THAT DAY', [...often.values()]),
    ...section('LOCKS AND NUMBERS', kit.numbered.flatMap(numberedLines)),
    ...section('PERMITS', kit.permits.flatMap(thingLines)),
    ...section('LIFTING GEAR', kit.lifting.flatMap(thingLines)),
    ...section('TOOLS', kit.tools.flatMap(thingLines)),
    ...section('PARTS', kit.parts.flatMap(thingLines)),
    ...section('CONSUMABLES', kit.consumables.flatMap(thingLines)),
    ...section('PUT IN, AND OUT AGAIN', kit.placed.flatMap(thingLines)),
    ...section(counted('PEOPLE', peopleWords(kit)), peopleLines(kit)),
  ]
}

/**
 * Before the first line of a job: one short line when nothing is wrong. Else each seat or role that holds it, and each
 * instrument that could be picked and would fail at its step, in full.
 */
export function kitBeforeJob(kit: Kit): { readonly lines: readonly string[]; readonly wrong: boolean } {
  const unfit = kit.seats.filter((seat) => seat.held === null).flatMap((seat) => seat.unfit)
  const wrong = [
    ...kit.holds.map((hold) => `HOLD: not to be started without ${hold}`),
    ...kit.verdictHolds,
    ...unfit.filter((one) => !one.refused).map((one) => `Not for this job: ${unfitText(one)}.`),
    ...kit.seats.filter((seat) => seat.changesOver).map(changeOver),
  ]
  return { lines: [...new Set(wrong), `Kit: ${brief(kit)}. See barover kit`], wrong: wrong.length > 0 }
}

/** `9 instruments (M-1 may not be used), 6 locks, 4 more`. */
function brief(kit: Kit): string {
  const { numbered, permits, lifting, tools, parts, consumables } = kit
  const locks = numbered.find((one) => one.of === 'lock')?.count ?? 0
  const others = numbered.filter((one) => one.of !== 'lock')
  const more = [others, permits, lifting, tools, parts, consumables].reduce((n, some) => n + some.length, 0)
  const words = [
    ...(kit.seats.length === 0 ? [] : [`${many(kit.seats.length, 'instrument')}${leftBehind(kit)}`]),
    ...(locks === 0 ? [] : [many(locks, 'lock')]),
    ...(more === 0 ? [] : [`${more} more`]),
  ]
  return words.length === 0 ? 'nothing to bring' : words.join(', ')
}

/** Instruments of the register that may be picked for no seat of this job. */
function leftBehind({ seats }: Kit): string {
  const refused = seats.flatMap(({ unfit }) => unfit.filter((one) => one.refused).map((one) => one.id))
  const serves = (id: string) =>
    seats.some(({ fit, unfit }) => [...fit, ...unfit.filter((u) => !u.refused)].some((one) => one.id === id))
  const ids = [...new Set(refused)].filter((id) => !serves(id))
  if (ids.length === 0) return ''
  return ids.length > 2 ? ` (${ids.length} not fit)` : ` (${list(ids, 'and')} may not be used)`
}

function many(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`
}

function section(title: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : ['', title, ...lines.map((line) => `  ${line}`)]
}

/** Whoever vouches for something did none of it. */
function peopleWords({ roles }: Kit): string {
  return roles.some((role) => role.second) ? 'two at least' : 'one at least'
}

function counted(title: string, count: number | string): string {
  return `${title}   ${count}`
}

/** Refused at several seats for the same: told once, by id. */
function refusedOften(seats: readonly KitSeat[]): ReadonlyMap<string, string> {
  const times = new Map<string, { readonly one: Unfit; readonly n: number }>()
  for (const one of seats.flatMap(({ unfit }) => unfit.filter(({ refused }) => refused)))
    times.set(one.id, { one, n: (times.get(one.id)?.n ?? 0) + 1 })
  return new Map(
    [...times]
      .filter(([, { n }]) => n > 1)
      .map(([id, { one }]) => [
        id,
        `${unfitText({ ...one, why: one.why.filter(({ steps }) => steps === null) })}: ${one.title}`,
      ]),
  )
}

function seatLines(seat: KitSeat, often: ReadonlyMap<string, string>): string[] {
  const below = seat.unfit.filter(({ id, refused }) => refused && often.has(id))
  const all = stepsText(seat.steps)
  const asks = seat.asks.map(({ what, steps }) => {
    const where = stepsText(steps)
    return where === all ? what : `${what} (${where})`
  })
  return [
    `${capital(list(seat.kinds, 'or'))}, for ${seat.for}: ${all}`,
    `  asked: ${asks.join('; ')}`,
    ...(seat.changesOver ? [`  ${changeOver(seat)}`] : []),
    ...seat.fit.map(
      ({ id, title, due, standard, scale }) =>
        `  fit${scale === null ? '' : ` only if what is read there lies within ${scale}`}: ${id}, ${title}, calibrated until ${due}${standard === null ? '' : `; with its ${standard}`}`,
    ),
    ...seat.unfit.filter((one) => !below.includes(one)).map((one) => `  NOT ${unfitText(one)}`),
    ...(below.length === 0 ? [] : [`  NOT, as told below: ${list(below.map(({ id }) => id))}`]),
    ...(seat.fit.length === 0 && seat.unfit.length === 0 ? ['  none in the register'] : []),
  ]
}

function changeOver(seat: KitSeat): string {
  return `No one instrument does all of it for ${seat.for}: change over between steps.`
}

function numberedLines({ what, count, points, notes, steps }: Numbered): string[] {
  const each = points.length > 0 ? ', one for each isolation point' : ''
  const many = count === null ? 'one for each person on the job' : `${count}${each}`
  return [
    `${capital(what)}: ${many}, ${stepsText(steps)}`,
    ...points.map((point) => `  ${point}`),
    ...notes.map((note) => `  ${note}`),
  ]
}

function thingLines({ what, notes, steps }: Thing): string[] {
  return [`${what}: ${stepsText(steps)}`, ...notes.map((note) => `  ${note}`)]
}

/** Who is needed for what, and who on the crew list can; what is beyond the crew last. */
export function peopleLines({ roles, persons, crew }: Kit): string[] {
  const named = (id: string) => `${id} ${crew.find((person) => person.id === id)?.name ?? ''}`.trim()
  const lines = roles.flatMap(({ does, roles: words, steps, can, held }) => [
    `${capital(a(list(words, 'or')))} ${does}${steps === null ? '' : `: ${stepsText(steps)}`}`,
    held === null ? `  on the crew list: ${can.map(named).join(', ')}` : `  HOLD: not without ${held}`,
  ])
  return [...lines, ...persons.flatMap(thingLines)]
}
