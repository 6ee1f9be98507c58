// Two trainees who work a practice session line by line: one who looks and keys what is there, one who keys what is expected.
import { definitionsFrom } from '../../src/authoring/definitions.ts'
import type { Definitions } from '../../src/core/job/definitions.ts'
import { asKind, gasLimitById } from '../../src/core/job/definitions.ts'
import type { Entry } from '../../src/core/job/entries.ts'
import { type GateStep, gateState, type Item, inspectedWords, wantsAnother } from '../../src/core/job/gate.ts'
import { judgeStep } from '../../src/core/job/judge-step.ts'
import { waitsFor } from '../../src/core/job/next.ts'
import type { Level, Practised } from '../../src/core/job/practice.ts'
import { unsuited } from '../../src/core/job/seats.ts'
import { truthOf } from '../../src/core/practice/ask.ts'
import { drawFaults } from '../../src/core/practice/draw.ts'
import { EDITION } from '../../src/core/practice/edition.ts'
import { faultsFor } from '../../src/core/practice/faults.ts'
import { judgedBy } from '../../src/core/practice/governable.ts'
import { type Grade, gradeOf } from '../../src/core/practice/grade.ts'
import { pocketGoverns } from '../../src/core/practice/pocket-governs.ts'
import { isAsked } from '../../src/core/practice/truth.ts'
import { offersAt } from '../../src/core/talk/offered.ts'
import { diagnosed } from './diagnosis.ts'
import { noOverhauls, Walk } from './example.ts'
import type { Site } from './pocket-job.ts'
import { shippedCopies } from './shipped-jobs.ts'

const known = new Map<string, Definitions>()

/** The pocket of the other machine is only open or shut, and moves too little. */
const ON_RG27: readonly string[] = ['pocket-load', 'set-pocket']

/** A shipped procedure on an example machine as practice has it: nothing was left before, so nothing is held against that. */
export function defsOf(
  procedure: string,
  site: Site = ON_RG27.includes(procedure) ? 'rg-27' : 'tc-401',
): Definitions {
  const key = `${procedure} ${site}`
  let defs = known.get(key)
  if (defs === undefined) {
    const made = definitionsFrom(
      shippedCopies(`${procedure}.yaml`, site).map((file) =>
        file.role === 'machine' ? { ...file, text: noOverhauls(file.text) } : file,
      ),
    )
    if (!made.ok) throw new Error(made.diagnostics.map(({ message }) => message).join('\n'))
    defs = made.defs
    known.set(key, defs)
  }
  return defs
}

export const practiceDefs = (): Definitions => defsOf('bore-inspection')
export const rodDefs = (): Definitions => defsOf('rod-sizes')

export type Trainee = (walk: Walk) => boolean

export interface Session {
  readonly walk: Walk
  readonly grade: Grade
}

/** More lines than any session takes. */
const MOST_LINES = 900

export function session(seed: number, level: Level, trainee: Trainee, defs = practiceDefs()): Session {
  return sessionOf(defs, { seed, level, edition: EDITION }, trainee)
}

export function sessionOf(defs: Definitions, practice: Practised, trainee: Trainee): Session {
  const { seed, level } = practice
  const walk = new Walk(defs, 'PRACTICE', { practice })
  let isOn = true
  for (let n = 0; isOn; n++) {
    if (n > MOST_LINES)
      throw new Error(
        `seed ${seed}, level ${level}: stuck at ${walk.prompt.kind}: ${walk.said.slice(-3).join(' ')}`,
      )
    isOn = trainee(walk) && walk.state.closed === null
  }
  const grade = gradeOf(walk.engine.defs, walk.entries)
  if (grade === null) throw new Error('no practice session')
  return { walk, grade }
}

/** The first seed of a level that hides just this. */
export function seedHiding(id: string, level: Level, defs: Definitions = practiceDefs()): number {
  const faults = faultsFor(defs)
  for (let seed = 1; seed < 20_000; seed++) {
    const drawn = drawFaults(faults, seed, level)
    if (drawn.length === 1 && drawn[0] === id) return seed
  }
  throw new Error(`no seed of level ${level} hides ${id}`)
}

type Asked = Extract<Entry, { type: 'practice.asked' }>

export function look(walk: Walk, words = 'look'): Asked {
  walk.key(words)
  const { last } = walk
  if (last.type !== 'practice.asked')
    throw new Error(`${words} showed nothing: ${walk.said.slice(-2).join(' ')}`)
  return last
}

/** Names what the record of the session tells, and goes: false. */
export function giveUp(walk: Walk): false {
  walk.keys('stop', `fault ${diagnosed(walk)}`, 'leave')
  return false
}

export const careful: Trainee = (walk) => {
  const { prompt, state, engine } = walk
  const { defs } = engine
  if (walk.talk.ask !== null) return answerAsk(walk)
  switch (prompt.kind) {
    case 'tag': {
      walk.key(look(walk).figure ?? '')
      return walk.last.type === 'machine.mismatched' ? giveUp(walk) : true
    }
    case 'evidence': {
      const typed = seenAt(walk, prompt.gate, prompt.item)
      if (typed === null) return giveUp(walk)
      walk.key(typed)
      return walk.entries.slice(-3).some(({ type }) => type === 'evidence.failed') ? giveUp(walk) : true
    }
    case 'read': {
      const { figure } = look(walk, 'measure')
      if (figure === undefined) return giveUp(walk)
      walk.key(figure)
      return true
    }
    case 'observe': {
      const seen = look(walk)
      if (seen.alarm === true) return giveUp(walk)
      const truth =
        state.practice === null ? null : truthOf(defs, state.practice, prompt.step, {}, Number.NaN)
      if (truth?.kind !== 'eye') throw new Error(`nothing to be seen at ${prompt.step.id}`)
      const { conditions } = asKind(prompt.step, 'observe').step
      walk.key(truth.conditions.map((id) => conditions.findIndex((one) => one.id === id) + 1).join(' '))
      return true
    }
    case 'confirm': {
      if (!isAsked(defs, prompt.step)) return common(walk)
      const seen = look(walk)
      if (seen.alarm === true) return giveUp(walk)
      const truth =
        state.practice === null ? null : truthOf(defs, state.practice, prompt.step, {}, walk.now.ms)
      if (truth?.kind === 'done' && !truth.isSo) {
        walk.keys('2', 'it is not so, and stays as it is')
        return giveUp(walk)
      }
      return common(walk)
    }
    case 'judge': {
      const record = judgeStep(defs, state, asKind(prompt.step, 'judge'), 'test')
      if (record.compute === 'pocket_setting')
        walk.key(`${record.result.verdict} ${pocketGoverns(record)[0] ?? 'nothing'}`)
      else walk.key(`${record.result.verdict} ${record.result.governs?.characteristics[0] ?? ''}`.trim())
      return true
    }
    case 'finish':
      walk.key(diagnosed(walk))
      return true
    default:
      return common(walk)
  }
}

/** What may be keyed there by what is seen; null: nothing, and the work stops. */
export function seenAt(walk: Walk, gate: GateStep, item: Item): string | null {
  const { evidence } = item
  if (evidence.kind === 'witness') return witness(walk, gate, evidence.roles)
  if (wantsAnother(item)) return 'sign on'
  waitOver(walk, gate, item)
  const asked = look(walk)
  if (asked.figure !== undefined) return asked.figure
  const { practice } = walk.state
  const truth =
    practice === null
      ? null
      : truthOf(
          walk.engine.defs,
          practice,
          gate,
          { item: item.key, isFallen: !isBegun(walk, gate, item.key) },
          walk.now.ms,
        )
  return truth?.kind === 'line' ? truth.mayType : null
}

/** A wait that was begun goes by. */
function waitOver(walk: Walk, gate: GateStep, { evidence, key }: Item): void {
  if (evidence.kind === 'wait' && isBegun(walk, gate, key)) walk.wait(evidence.lasts.si / 60)
}

function isBegun(walk: Walk, gate: GateStep, key: string): boolean {
  return gateState(walk.state, gate.id).begun[key] !== undefined
}

function witness(walk: Walk, gate: GateStep, roles: readonly string[]): string {
  const { given, begun } = gateState(walk.state, gate.id)
  const doers = [...Object.values(given), ...Object.values(begun)].map(({ by }) => by)
  const { crew } = walk.engine.defs.crew
  return (
    crew.find(({ id, role }) => roles.includes(role) && !doers.includes(id) && id !== people(walk).doer)
      ?.id ?? 'ML'
  )
}

/** Looks everywhere, and keys what a good machine would show. Takes readings in a hurry, and finds nothing. */
export const careless: Trainee = (walk) => {
  const { prompt, engine } = walk
  if (walk.talk.ask !== null) return answerAsk(walk)
  switch (prompt.kind) {
    case 'tag':
      look(walk)
      walk.key(engine.defs.machine.machine)
      return true
    case 'evidence': {
      const { evidence } = prompt.item
      if (evidence.kind === 'witness') walk.key(witness(walk, prompt.gate, evidence.roles))
      else if (wantsAnother(prompt.item)) walk.key('sign on')
      else {
        waitOver(walk, prompt.gate, prompt.item)
        look(walk)
        walk.key(expected(walk, prompt.gate, prompt.item))
      }
      return true
    }
    case 'read': {
      const asked = look(walk, 'measure quick')
      walk.key(asked.figure ?? '9.5020')
      return true
    }
    case 'observe': {
      look(walk)
      const { conditions } = asKind(prompt.step, 'observe').step
      const usual = USUAL[prompt.step.step.id] ?? ''
      walk.key(
        String(
          1 +
            Math.max(
              0,
              conditions.findIndex(({ id }) => id === usual),
            ),
        ),
      )
      return true
    }
    case 'judge':
      walk.key(`ACCEPT ${judgedBy(engine.defs, prompt.step.id)[0] ?? ''}`.trim())
      return true
    case 'finish':
      walk.key('0')
      return true
    default:
      return common(walk)
  }
}

/** What is as on every good day, where it is not the first of the list. */
const USUAL: Readonly<Record<string, string>> = {
  record_says: 'solid',
  plugs_seen: 'none',
  mass_says: 'solid',
  knock: 'dull',
  handled: 'solid',
}

export function expected(walk: Walk, gate: GateStep, item: Item): string {
  const { evidence, key } = item
  // What the list at the desk has.
  const asked = walk.last
  const shown = asked.type === 'practice.asked' ? asked.shown.match(/\b[A-Z]{1,2}-\d+/g)?.at(-1) : undefined
  const weight = asked.type === 'practice.asked' ? /\d+ (?:lb|kg)(?=\.$)/.exec(asked.shown)?.[0] : undefined
  switch (evidence.kind) {
    case 'words':
      return evidence.words
    // As every good day has it, and what the instrument shows where that is as good.
    case 'gas': {
      const limit = gasLimitById(walk.engine.defs, evidence.limit)
      if (limit?.gas === 'oxygen' && !(limit.place === 'in_the_opening' && sweepsItself(walk.engine.defs)))
        return limit.place === 'in_the_opening' ? '20.8' : '20.9'
      return passing(asked, limit?.at_least?.value, limit?.at_most?.value) ?? '0'
    }
    case 'measured': {
      const inC = walk.engine.defs.machine.shop_units.temperature === 'degC'
      const usual = evidence.quantity === 'temperature' ? (inC ? '21' : '70') : '0.0'
      // The bound may be written in the other degrees.
      const bound = (one: { value: number; si: number } | undefined) =>
        evidence.quantity === 'temperature' && inC && one !== undefined ? one.si - 273.15 : one?.value
      return passing(asked, bound(evidence.at_least), bound(evidence.at_most)) ?? usual
    }
    case 'wait':
      return isBegun(walk, gate, key) ? evidence.words : evidence.begin_words
    case 'lift':
      return item.part === 'inspected' ? inspectedWords(evidence) : (weight ?? shown ?? 'S-12')
    case 'witness':
      return 'ML'
    case 'locks':
      return shown?.startsWith('L-') === true ? shown : `L-9${key.length}`
    case 'numbers':
      return shown ?? `T-9${key.length}`
  }
}

/** The figure that was shown, where it passes. */
function passing(
  asked: Entry,
  least = Number.NEGATIVE_INFINITY,
  most = Number.POSITIVE_INFINITY,
): string | null {
  const figure = asked.type === 'practice.asked' ? asked.figure : undefined
  return figure !== undefined && Number(figure) >= least && Number(figure) <= most ? figure : null
}

function common(walk: Walk): boolean {
  const { prompt, engine, state } = walk
  switch (prompt.kind) {
    case 'sign-on':
      walk.key(people(walk).doer)
      return true
    case 'tell':
      walk.key('')
      return true
    case 'confirm':
      walk.key('1')
      return true
    case 'pick': {
      const { defs } = engine
      const fit = prompt.options.filter((one) => unsuited(defs, prompt.seat.id, one) === null)
      const wanted = fit.filter((one) =>
        prompt.seat.id === 'meter' && sweepsItself(defs)
          ? one.kind === 'gas_meter' && one.reads_in_inert !== undefined
          : RANGED[prompt.seat.id]?.includes(one.id) === true,
      )
      for (const one of [...wanted, ...fit]) {
        walk.key(one.id)
        if (walk.state.seats[prompt.seat.id] !== undefined) return true
      }
      throw new Error(`no instrument for ${prompt.seat.id}`)
    }
    case 'clear':
      walk.key(prompt.gate.step.clear_words)
      return true
    case 'doubt':
      walk.keys('3', 'read again as the sheet says, it is so')
      return true
    case 'late':
      walk.key('2')
      return true
    case 'decide': {
      const { step } = asKind(prompt.step, 'decide')
      const open = offersAt(state, prompt.step).filter(({ barred }) => barred === null)
      const goesOn = open.filter(({ choice }) => !waitsFor(step, choice))
      const on = goesOn.find(({ choice }) => choice === 'accept' || choice === 'concession') ?? goesOn.at(-1)
      if (on === undefined) return giveUp(walk)
      walk.key(on.choice)
      return true
    }
    case 'point':
    case 'review':
      walk.key(people(walk).lead)
      return true
    case 'findings':
      walk.key('1')
      return true
    case 'open-things':
      walk.key('taken')
      return true
    // What is not known yet holds the work, and nothing here changes it.
    case 'held':
      return giveUp(walk)
    default:
      throw new Error(`nobody told the trainee about ${prompt.kind} of ${engine.defs.procedure.procedure}`)
  }
}

/** A cylinder that is opened in the job that swept it has next to no air in it. */
const sweepsItself = ({ procedure }: Definitions) => procedure.procedure === 'open_cylinder'

/** Gauges whose range has what is read there. */
const RANGED: Readonly<Record<string, readonly string[]>> = {
  suction_gauge: ['B-52'],
  discharge_gauge: ['B-54'],
  piston_micrometer: ['M-9', 'B-13'],
}

const ANSWERS: Readonly<Record<string, string>> = {
  'finding-choice': '2',
  'dispose-why': 'as it was seen there, for the lead to look at, none given',
  'correct-kept': 'read again as the sheet says, it is so',
  'finding-note': 'as it was seen there, for the lead to look at',
  'figure-sure': '1',
  'number-sure': '1',
  'concession-until': '4000 h',
  'concession-from': '54700',
  'concession-authority': 'site rule 12',
  'step-where': 'where it was fitted',
  'step-number': '',
  'place-number': '',
  'account-which': '1',
  object: 'it is not so, and stays as it is',
}

/** Whoever keys, somebody else, and a lead. */
function people({ engine }: Walk): { readonly doer: string; readonly other: string; readonly lead: string } {
  const of = (role: string) => engine.defs.crew.crew.filter((one) => one.role === role).map(({ id }) => id)
  const [doer = '', other = ''] = of('mechanic')
  return { doer, other, lead: of('lead')[0] ?? '' }
}

export function answerAsk(walk: Walk): boolean {
  const { ask } = walk.talk
  const { doer, other, lead } = people(walk)
  const who: Readonly<Record<string, string>> = {
    'dispose-who': lead,
    'come-on': other,
    'account-who': ask?.kind === 'account-who' && ask.first === other ? doer : other,
  }
  const kind = ask?.kind ?? ''
  const answer = who[kind] ?? ANSWERS[kind]
  if (answer === undefined) throw new Error(`nobody told the trainee about the question ${ask?.kind}`)
  walk.key(answer)
  return true
}
