// Two trainees who work a practice session line by line: one who looks and keys what is there, one who keys what is expected.

import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Definitions } from '../../src/core/job/definitions.ts'
import { asKind } from '../../src/core/job/definitions.ts'
import type { Entry } from '../../src/core/job/entries.ts'
import type { GateStep, Item } from '../../src/core/job/gate.ts'
import { judgeStep } from '../../src/core/job/judge-step.ts'
import type { Level } from '../../src/core/job/practice.ts'
import { truthOf } from '../../src/core/practice/ask.ts'
import { drawFaults } from '../../src/core/practice/draw.ts'
import { faultsFor } from '../../src/core/practice/faults.ts'
import { type Grade, gradeOf } from '../../src/core/practice/grade.ts'
import { offersAt } from '../../src/core/talk/offered.ts'
import { judgedBy } from '../../src/core/talk/practice-words.ts'
import { exampleDefs, noOverhauls, ROOT, Walk } from './example.ts'

let made: Definitions | undefined

/** The example machine as practice has it: nothing was left before, so nothing is held against that. */
export function practiceDefs(): Definitions {
  made ??= exampleDefs({ machine: noOverhauls })
  return made
}

export type Trainee = (walk: Walk) => boolean

export interface Session {
  readonly walk: Walk
  readonly grade: Grade
}

let ofRod: Definitions | undefined

/** Sizes of the rod, on the same machine. */
export function rodDefs(): Definitions {
  ofRod ??= exampleDefs({
    machine: noOverhauls,
    procedure: () => readFileSync(join(ROOT, 'procedures', 'rod-sizes.yaml'), 'utf8'),
  })
  return ofRod
}

/** More lines than any session takes. */
const MOST_LINES = 400

export function session(seed: number, level: Level, trainee: Trainee, defs = practiceDefs()): Session {
  const walk = new Walk(defs, 'PRACTICE', { practice: { seed, level } })
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

function look(walk: Walk, words = 'look'): Asked {
  walk.key(words)
  const { last } = walk
  if (last.type !== 'practice.asked')
    throw new Error(`${words} showed nothing: ${walk.said.slice(-2).join(' ')}`)
  return last
}

/** Names what the record of the session tells, and goes: false. */
function giveUp(walk: Walk): false {
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
    case 'judge': {
      const record = judgeStep(defs, state, asKind(prompt.step, 'judge'), 'test')
      if (record.compute === 'pocket_setting') throw new Error('no part')
      const [governs = ''] = record.result.governs?.characteristics ?? []
      walk.key(`${record.result.verdict} ${governs}`.trim())
      return true
    }
    case 'finish':
      walk.key(diagnosed(walk))
      return true
    default:
      return common(walk)
  }
}

function seenAt(walk: Walk, gate: GateStep, item: Item): string | null {
  if (item.evidence.kind === 'witness') return 'ML'
  const asked = look(walk)
  if (asked.figure !== undefined) return asked.figure
  const { practice } = walk.state
  const truth =
    practice === null ? null : truthOf(walk.engine.defs, practice, gate, { item: item.key }, walk.now.ms)
  return truth?.kind === 'line' ? truth.mayType : null
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
    case 'evidence':
      if (prompt.item.evidence.kind !== 'witness') look(walk)
      walk.key(expected(walk, prompt.item))
      return true
    case 'read': {
      const asked = look(walk, 'measure quick')
      walk.key(asked.figure ?? '9.5020')
      return true
    }
    case 'observe':
      look(walk)
      walk.key('1')
      return true
    case 'judge':
      walk.key(`ACCEPT ${judgedBy(engine.defs, prompt.step.id)[0]}`)
      return true
    case 'finish':
      walk.key('0')
      return true
    default:
      return common(walk)
  }
}

function expected(walk: Walk, { evidence, key }: Item): string {
  if (evidence.kind === 'witness') return 'ML'
  if (evidence.kind === 'words') return evidence.words
  // As every good day has it.
  if (evidence.kind === 'gas')
    return { oxygen_breathing: '20.9', oxygen_inside: '20.8' }[evidence.limit] ?? '0'
  // The number that the list at the desk has.
  const asked = walk.last
  const shown = asked.type === 'practice.asked' ? /L-\d+/.exec(asked.shown)?.[0] : undefined
  return shown ?? `L-9${key.length}`
}

function common(walk: Walk): boolean {
  const { prompt, engine } = walk
  switch (prompt.kind) {
    case 'sign-on':
      walk.key('RO')
      return true
    case 'tell':
      walk.key('')
      return true
    case 'confirm':
      walk.key('1')
      return true
    case 'pick': {
      for (const { id } of prompt.options) {
        walk.key(id)
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
    case 'decide':
      walk.key(offersAt(walk.state, prompt.step).find(({ barred }) => barred === null)?.choice ?? '')
      return true
    case 'findings':
      walk.key('1')
      return true
    default:
      throw new Error(`nobody told the trainee about ${prompt.kind} of ${engine.defs.procedure.procedure}`)
  }
}

function answerAsk(walk: Walk): boolean {
  const { ask } = walk.talk
  switch (ask?.kind) {
    case 'finding-choice':
      walk.key('2')
      return true
    case 'dispose-who':
      walk.key('KH')
      return true
    case 'dispose-why':
    case 'finding-note':
      walk.key('as it was seen there, for the lead to look at')
      return true
    case 'figure-sure':
      walk.key('1')
      return true
    default:
      throw new Error(`nobody told the trainee about the question ${ask?.kind}`)
  }
}

/** Numbers of what the record of the session tells, by nothing else. */
export function diagnosed(walk: Walk): string {
  const found = faultsFor(walk.engine.defs).flatMap(({ id }, n) => (tells(walk, id) ? [n + 1] : []))
  return found.length === 0 ? '0' : found.join(' ')
}

const SHOWN: Readonly<Record<string, RegExp>> = {
  'lock-missing': /no lock in it/,
  'lock-open': /comes open/,
  'driver-live': /motor hums/,
  'bleed-blows': /breath of gas/,
  'bleed-plugged': /stops hard/,
  'block-loose': /unpinned/,
  'block-one-way': /comes away/,
  'meter-dead': /stays at 0/,
  'gas-returns': /monitor on your chest sounds/,
  'wear-top': /polished over your head/,
  'wear-side': /polished on the right/,
  ridge: /nail stops at a ledge/,
  scored: /nail drops into/,
  cracked: /dark hair line/,
  rust: /brown streak/,
  damp: /comes away wet/,
  leak: /Water stands/,
  'no-strip': /very edge of the counterbore/,
}

const FAILED: Readonly<Record<string, string>> = {
  'thin-air': 'oxygen_breathing',
  'gas-breathing': 'flammable_breathing',
  'h2s-breathing': 'h2s_breathing',
  'gas-inside': 'flammable_inside',
  'h2s-inside': 'h2s_inside',
  'nitrogen-hides-gas': 'flammable_inside',
}

function tells(walk: Walk, id: string): boolean {
  const { entries, engine, state } = walk
  const asked = entries.filter((entry) => entry.type === 'practice.asked')
  const shown = SHOWN[id]
  if (shown !== undefined) return asked.some((one) => shown.test(one.shown))
  const failed = FAILED[id]
  if (failed !== undefined) {
    const isIt = entries.some((one) => one.type === 'evidence.failed' && one.item === failed)
    const oxygen = asked.findLast(({ of }) => of.endsWith('/oxygen_inside'))?.figure
    const isThin = oxygen !== undefined && Number(oxygen) < 10
    return isIt && (id === 'nitrogen-hides-gas') === (isThin && failed === 'flammable_inside')
  }
  if (id === 'plate-other') return entries.some(({ type }) => type === 'machine.mismatched')
  const figures = (step: string) =>
    asked.flatMap((one) => (one.step === step && one.figure !== undefined ? [Number(one.figure)] : []))
  const isRod = engine.defs.procedure.procedure === 'rod_sizes'
  const [before, after, first] = isRod
    ? (['mic_set_before', 'mic_set_after', 'rod_top'] as const)
    : (['set_before', 'set_after', 'bore'] as const)
  const used = state.readings[`${first}.${isRod ? 'middle' : 'centre.vertical'}`]?.at(-1)?.instrument
  const standard = engine.defs.instruments.instruments.find((one) => one.id === used)
  const size = standard !== undefined && 'set_check' in standard ? standard.set_check.size.value : Number.NaN
  const off = (step: string) => Math.abs((figures(step).at(-1) ?? Number.NaN) - size)
  const repeats = [...new Set(asked.map(({ of }) => of))].filter((of) =>
    /^(?:bore|strip_diameter|rod_(?:top|side|unworn|fit))\./.test(of),
  )
  const isLoose = repeats.some((of) => asked.filter((one) => one.of === of).length > 2)
  const [part, gauge] = isRod
    ? ['rod_temp_before', 'mic_temp_before']
    : ['part_temp_before', 'gauge_temp_before']
  const warm = (figures(part ?? '').at(-1) ?? Number.NaN) - (figures(gauge ?? '').at(-1) ?? Number.NaN)
  switch (id) {
    case 'gauge-off':
      return !isLoose && off(before) > 0.0005
    case 'gauge-knocked':
      return !isLoose && off(before) < 0.0005 && off(after) > 0.0005
    case 'gauge-loose':
      return isLoose
    case 'part-hot':
      return warm > 15
    case 'gauge-warm':
      return warm < -15
  }
  if (id.startsWith('rod-')) return !isLoose && rodTells(walk, id)
  const record = Object.values(state.verdicts)[0]?.verdict
  if (record?.compute !== 'bore_form' || isLoose) return false
  const { judged, form } = record.result
  const isBeyond = (characteristic: string) =>
    judged.some((one) => one.characteristic === characteristic && (one.judgement.used ?? 0) > 1)
  switch (id) {
    case 'worn-out':
      return isBeyond('largest-diameter')
    case 'oval':
      return isBeyond('out-of-round')
    case 'barrel':
    case 'hourglass':
      return isBeyond('taper') && form?.form === id
    case 'taper':
      return isBeyond('taper') && form?.form === 'tapered'
  }
  throw new Error(`nobody told the trainee how ${id} shows`)
}

const OF_ROD: Readonly<Record<string, string>> = {
  'rod-undersize': 'rod-undersize',
  'rod-oval': 'rod-out-of-round',
  'rod-tapered': 'rod-taper',
  'rod-bent': 'rod-straightness',
  'rod-thread': 'rod-thread-runout',
  'rod-shoulder': 'rod-shoulder-squareness',
}

/** A figure of the rod that is past its limit, whatever the word: the check of the micrometer may hold it. */
function rodTells({ state }: Walk, id: string): boolean {
  return Object.values(state.verdicts).some(
    ({ verdict }) =>
      verdict.compute === 'figures' &&
      verdict.inputs.figures.some(
        ({ characteristic, value, limit }) =>
          characteristic === OF_ROD[id] && value !== null && limit !== null && value > limit.value,
      ),
  )
}
