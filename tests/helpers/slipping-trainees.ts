// Trainees who are careful but for one thing that each does on purpose, and who tell what that was: what a session says of them is to
// be that and no more.
import { asKind } from '../../src/core/job/definitions.ts'
import { wantsAnother } from '../../src/core/job/gate.ts'
import { judgeStep } from '../../src/core/job/judge-step.ts'
import type { Prompt } from '../../src/core/job/next.ts'
import { truthOf } from '../../src/core/practice/ask.ts'
import { faultsFor } from '../../src/core/practice/faults.ts'
import { judgedBy } from '../../src/core/practice/governable.ts'
import { CALLED } from '../../src/core/talk/practice-words.ts'
import { diagnosed } from './diagnosis.ts'
import type { Walk } from './example.ts'
import { answerAsk, careful, expected, giveUp, look, seenAt, type Trainee } from './trainees.ts'

/** What it came to do; `none`: it never came to it. */
export type Deed =
  | 'none'
  | 'line'
  | 'fell'
  | 'reading'
  | 'look'
  | 'finding'
  | 'verdict'
  | 'fault'
  | 'hint'
  | 'false'

export interface Slipping {
  readonly trainee: Trainee
  /** Each time, in order. */
  readonly deeds: readonly Deed[]
}

/** Does it at this prompt and says what it was; null: nothing here to do it with. */
type Does = (walk: Walk) => Deed | null

/** At the chance with this number, counted from nought, and then never again. */
function once(nth: number, isChance: (prompt: Prompt) => boolean, does: Does): Slipping {
  const deeds: Deed[] = []
  let met = 0
  const trainee: Trainee = (walk) => {
    if (deeds.length > 0 || walk.talk.ask !== null || !isChance(walk.prompt) || met++ < nth)
      return careful(walk)
    const deed = does(walk)
    if (deed === null) return careful(walk)
    deeds.push(deed)
    return true
  }
  return { trainee, deeds }
}

const isLine = (prompt: Prompt): boolean =>
  prompt.kind === 'evidence' && prompt.item.evidence.kind !== 'witness' && !wantsAnother(prompt.item)

/** Lines at which another thing can be keyed than is there, and be taken. */
const isFigured = (prompt: Prompt): boolean =>
  prompt.kind === 'read' ||
  (isLine(prompt) &&
    prompt.kind === 'evidence' &&
    ['locks', 'numbers', 'gas', 'measured'].includes(prompt.item.evidence.kind))

/** Its first figure read wrong: that is the number of nothing else there. */
function otherNumber(number: string): string {
  return number.replace(/\d/, (digit) => String((Number(digit) + 5) % 10 || 9))
}

/** One step of the last place further, as a figure that is read wrong by one line. */
function otherFigure(figure: string): string {
  const places = figure.split('.')[1]?.length ?? 0
  return (Number(figure) + 10 ** -places).toFixed(places)
}

function answered(walk: Walk): void {
  while (walk.talk.ask !== null) answerAsk(walk)
}

/** What is there, by a look; null: nothing that may be keyed. */
function there(walk: Walk): string | null {
  const { prompt } = walk
  if (prompt.kind === 'read') return look(walk, 'measure').figure ?? null
  return prompt.kind === 'evidence' ? seenAt(walk, prompt.gate, prompt.item) : null
}

/** Looks, and keys something else. What was there comes back, and what it was a slip at. */
function slips(walk: Walk): { readonly deed: Deed; readonly was: string } | null {
  const isRead = walk.prompt.kind === 'read'
  const was = there(walk)
  if (was === null) return null
  const before = walk.entries.length
  walk.key(/^[-\d.]+$/.test(was) ? otherFigure(was) : otherNumber(was))
  answered(walk)
  const types = walk.entries.slice(before).map(({ type }) => type)
  if (types.includes('evidence.failed')) return { deed: 'fell', was }
  if (isRead) return types.some((type) => type.startsWith('reading.')) ? { deed: 'reading', was } : null
  return types.includes('evidence.given') ? { deed: 'line', was } : null
}

/** One slip of the keys at what was looked at, put right at once and without another look. */
export const mends = (nth: number): Slipping =>
  once(nth, isFigured, (walk) => {
    const slip = slips(walk)
    if (slip === null || slip.deed === 'fell') return slip?.deed ?? null
    if (walk.prompt.kind === 'doubt') walk.keys('2', slip.was)
    else if (slip.deed === 'reading') walk.keys('back', 'keyed wrong', slip.was)
    else mendLine(walk, slip.was)
    answered(walk)
    return slip.deed
  })

/** Where another line fell with it, the air is tested again from there. */
function mendLine(walk: Walk, was: string): void {
  walk.keys('back', '1')
  const given = walk.entries.findLast(({ type }) => type === 'evidence.given')
  const item = given?.type === 'evidence.given' ? given.item : ''
  if (walk.prompt.kind === 'evidence' && walk.prompt.item.key === item) walk.key(was)
}

/** The same slip, and it stays. */
export const leaves = (nth: number): Slipping => once(nth, isFigured, (walk) => slips(walk)?.deed ?? null)

/** Keys what is there, and is right by luck: nobody looked. */
export const skips = (nth: number): Slipping =>
  once(
    nth,
    (prompt) => isLine(prompt) || prompt.kind === 'observe',
    (walk) => {
      const { prompt, state, engine } = walk
      // What a look would show, on a copy that is thrown away.
      const twin = walk.copy()
      if (prompt.kind === 'observe') {
        const seen = look(twin)
        const truth = state.practice && truthOf(engine.defs, state.practice, prompt.step, {}, Number.NaN)
        if (seen.alarm === true || truth?.kind !== 'eye') return null
        const { conditions } = asKind(prompt.step, 'observe').step
        walk.key(truth.conditions.map((id) => conditions.findIndex((one) => one.id === id) + 1).join(' '))
        return 'finding'
      }
      const was = there(twin)
      if (was === null) return null
      const before = walk.entries.length
      walk.key(was)
      answered(walk)
      return walk.entries.slice(before).some(({ type }) => type === 'evidence.given') ? 'look' : null
    },
  )

/** Says another verdict than the figures come to, with the limit that does govern. */
export const misjudges = (nth: number): Slipping =>
  once(
    nth,
    (prompt) => prompt.kind === 'judge',
    (walk) => {
      const { prompt, state, engine } = walk
      if (prompt.kind !== 'judge') return null
      const { defs } = engine
      const record = judgeStep(defs, state, asKind(prompt.step, 'judge'), 'test')
      const other = CALLED.find((word) => word !== record.result.verdict && word !== 'HOLD') ?? 'REPLACE'
      const governs =
        record.compute === 'pocket_setting' ? undefined : record.result.governs?.characteristics[0]
      walk.key(`${other} ${governs ?? judgedBy(defs, prompt.step.id)[0] ?? ''}`.trim())
      return 'verdict'
    },
  )

/** Does all else as it should be, and names another fault than is there. */
export const misnames = (): Slipping => {
  const deeds: Deed[] = []
  const wrongOf = (walk: Walk): string => {
    const named = diagnosed(walk).split(' ')
    const all = faultsFor(walk.engine.defs).map((_one, n) => String(n + 1))
    return all.find((one) => !named.includes(one)) ?? '1'
  }
  const trainee: Trainee = (walk) => {
    if (walk.prompt.kind === 'finish' && walk.talk.ask === null) {
      walk.key(wrongOf(walk))
      deeds.push('fault')
      return true
    }
    return careful(
      renaming(walk, (line) => (line.startsWith('fault ') ? `fault ${wrongOf(walk)}` : line), deeds),
    )
  }
  return { trainee, deeds }
}

/** The same walk, but that a line that names something names something else. */
function renaming(walk: Walk, into: (line: string) => string, deeds: Deed[]): Walk {
  return new Proxy(walk, {
    get(target, key) {
      const value: unknown = Reflect.get(target, key)
      if (key !== 'key') return value
      return (line: string) => {
        if (into(line) !== line) deeds.push('fault')
        return target.key(into(line))
      }
    },
  })
}

/** Goes in wherever something at a hold point is not so: keys what a good machine would have. Where all is so, leaves a slip. */
export const passesFalse = (nth: number): Slipping => {
  const slip = leaves(nth)
  const deeds: Deed[] = []
  const trainee: Trainee = (walk) => {
    const { prompt, engine } = walk
    if (walk.talk.ask !== null) return careful(walk)
    if (prompt.kind === 'tag') {
      const seen = look(walk).figure
      if (seen !== engine.defs.machine.machine) deeds.push('false')
      walk.key(engine.defs.machine.machine)
      return true
    }
    if (prompt.kind !== 'evidence' || !isLine(prompt))
      return deeds.length > 0 ? careful(walk) : slip.trainee(walk)
    const twin = walk.copy()
    const was = there(twin)
    const before = twin.entries.length
    if (was !== null) twin.key(was)
    const isBad = was === null || twin.entries.slice(before).some(({ type }) => type === 'evidence.failed')
    if (!isBad) return deeds.length > 0 ? careful(walk) : slip.trainee(walk)
    there(walk)
    const from = walk.entries.length
    walk.key(expected(walk, prompt.gate, prompt.item))
    // The program takes it from nobody: a meter that is blind there, or a figure that fails whatever is there.
    if (walk.entries.slice(from).some(({ type }) => type === 'evidence.failed')) return giveUp(walk)
    deeds.push('false')
    return true
  }
  return {
    trainee,
    get deeds() {
      return deeds.length > 0 ? deeds : slip.deeds
    },
  }
}

/** Asks for a hint at each of the first prompts, and does all as it should be. */
export const asksHints = (most: number): Slipping => {
  const deeds: Deed[] = []
  let at = ''
  const trainee: Trainee = (walk) => {
    const { prompt } = walk
    const here = `${prompt.kind} ${walk.entries.length}`
    if (deeds.length < most && walk.talk.ask === null && here !== at && prompt.kind !== 'sign-on') {
      walk.key('hint')
      at = `${prompt.kind} ${walk.entries.length}`
      deeds.push('hint')
      return true
    }
    return careful(walk)
  }
  return { trainee, deeds }
}
