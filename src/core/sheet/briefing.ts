// The job briefing: every step read through with the crew before a lock goes on. It is paper and no part of any job:
// nothing is asked, nothing goes on record, and NOT LIVE stands on each line.
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import { gatesOf } from '../job/gate.ts'
import type { Kit } from '../kit/kit.ts'
import { kitBeforeJob, peopleLines } from '../kit/words.ts'
import { list } from '../lib/wording.ts'
import { type Block, layOut, type Row, row, type SheetStyle, textWidth } from './block.ts'
import { briefingStep } from './briefing-step.ts'

/** `only`: numbers of the steps that are read through; what can hurt and who signs stand with any of them. */
export function briefingBlocks(
  defs: Definitions,
  kit: Kit,
  style: SheetStyle,
  only: Steps = { from: 1, to: defs.steps.length },
): Block[] {
  const steps = defs.steps.filter(({ number }) => number >= only.from && number <= only.to)
  const after = [
    dangerBlock(defs),
    SPACE,
    { margin: '', rows: [row('Who does what', 'strong'), ...peopleLines(kit).map((line) => row(line))] },
    ...steps.flatMap((placed) => [
      SPACE,
      ...partHead(placed, defs.steps[defs.steps.indexOf(placed) - 1]),
      briefingStep(defs, placed),
    ]),
    SPACE,
    signBlock(defs, style),
  ]
  const linesOf = (blocks: readonly Block[]) =>
    blocks.reduce((sum, block) => sum + layOut(block, style).length, 0)
  const head = (lines: number) => [headBlock(defs, kit, steps.length, lines), SPACE]
  return [...head(linesOf([...head(0), ...after])), ...after]
}

export interface Steps {
  readonly from: number
  readonly to: number
}

/** `12` or `12-40`; or words of the title of a part, or its id: all of its steps. Null for what is neither. */
export function stepsAsked({ steps }: Definitions, asked: string): Steps | null {
  const [, from, to] = /^(\d{1,4})(?:\s*(?:-|to)\s*(\d{1,4}))?$/.exec(asked.trim()) ?? []
  if (from !== undefined) {
    const wanted = { from: Number(from), to: Number(to ?? from) }
    return steps.some(({ number }) => number >= wanted.from && number <= wanted.to) ? wanted : null
  }
  const words = asked.trim().toLowerCase()
  const isNamed = (part: PlacedStep) => part.id === words || part.step.title.toLowerCase().includes(words)
  const part = steps.flatMap(({ inside }) => inside).find(isNamed)
  if (part === undefined || words === '') return null
  const numbers = steps.filter(({ inside }) => inside.includes(part)).map(({ number }) => number)
  return { from: Math.min(...numbers), to: Math.max(...numbers) }
}

/** Titles of the parts with their steps: what a part of the briefing is asked by. */
export function partsOf({ steps }: Definitions): string[] {
  return [...new Set(steps.flatMap(({ inside }) => inside))].map((part) => {
    const numbers = steps.filter(({ inside }) => inside.includes(part)).map(({ number }) => number)
    return `${Math.min(...numbers)}-${Math.max(...numbers)}  ${part.step.title}`
  })
}

/** Lines of print on a page, margins left. Common practice, no source. */
const LINES_ON_PAGE = 60

const SPACE: Block = { margin: '', rows: [row('')] }

function headBlock(defs: Definitions, kit: Kit, told: number, lines: number): Block {
  const { procedure, machine, steps } = defs
  const all = steps.length
  const pages = Math.ceil(lines / LINES_ON_PAGE)
  const kitWords = kitBeforeJob(kit)
  return {
    margin: '',
    rows: [
      row('JOB BRIEFING', 'strong'),
      row(
        `${told === all ? `All ${all} steps` : `ONLY ${told} of ${all} steps`}, about ${lines} lines, ${pages} ${pages === 1 ? 'page' : 'pages'} of ${LINES_ON_PAGE}.${told === all ? ' Fewer: --steps 20-40, or a part by its title.' : ' The others are read through as well before a lock goes on.'}`,
        told === all ? 'plain' : 'caution',
      ),
      row(`${procedure.title}, edition ${procedure.edition}`, 'strong'),
      row(`${machine.machine}, ${machine.title}${machine.invented === true ? ', invented' : ''}`),
      row(procedure.summary),
      ...besidesRows(defs),
      row('It opens no hold point, takes no reading and is no permit.'),
      row(
        'The maker’s manual, site permits, local code and licensed practice come first. Barover helps trained people; it replaces none of these.',
        'caution',
      ),
      ...procedure.not_for.map((not) => row(`Not for: ${not}`)),
      ...kitWords.lines.map((line) => row(line, kitWords.wrong ? 'caution' : 'plain')),
    ],
  }
}

/** Whom the job cannot do without besides the one who keys; early, so that nobody learns it at the hold point. */
function besidesRows(defs: Definitions): Row[] {
  const witnessed = gatesOf(defs).filter(({ step }) => step.evidence.some(({ kind }) => kind === 'witness'))
  const decided = defs.steps.filter(({ step }) => step.kind === 'decide')
  const at = (what: string, placed: readonly PlacedStep[]) =>
    `${what}${placed.length === 1 ? '' : 's'} ${list(placed.map(({ number }) => String(number)))}`
  const who = [
    ...(witnessed.length === 0 ? [] : [`a witness who stands there, at ${at('hold point', witnessed)}`]),
    ...(decided.length === 0 ? [] : [`a lead who decides, at ${at('sheet', decided)}`]),
  ]
  return who.length === 0 ? [] : [row(`Needed besides who keys: ${who.join('; ')}.`, 'strong')]
}

function dangerBlock({ hazards, machine, makeSafe }: Definitions): Block {
  const { emergency, rescue } = machine.site
  return {
    margin: '',
    rows: [
      row('What can hurt, and what to do then', 'strong'),
      ...[...new Set(hazards.map(({ name }) => name))].map((name) => row(`- ${name}`, 'caution')),
      ...makeSafe.map((line) => row(`Make safe: ${line}`)),
      row(`Call: ${emergency}`, 'strong'),
      ...(rescue === undefined
        ? []
        : [row('Rescue plan', 'strong'), ...rescue.map((line) => row(`- ${line}`))]),
    ],
  }
}

/** Where a part begins its title stands over its first step. */
function partHead({ inside }: PlacedStep, before: PlacedStep | undefined): Block[] {
  const opened = inside.filter((part) => before?.inside.includes(part) !== true)
  if (opened.length === 0) return []
  return [{ margin: '', rows: opened.map(({ step }) => row(`Part: ${step.title}`, 'strong')) }, SPACE]
}

function signBlock({ crew }: Definitions, style: SheetStyle): Block {
  const room = Math.max(4, Math.min(60, textWidth(style)) - '  signed   date '.length)
  const date = Math.min(14, room >> 1)
  const line = `  signed ${'_'.repeat(room - date)}  date ${'_'.repeat(date)}`
  return {
    margin: '',
    rows: [
      row('Read through together, on paper, before the first lock goes on', 'strong'),
      row(
        'I know my part, the hazards, and how we get each other out. Who is not here signs before joining.',
      ),
      ...crew.crew.flatMap(({ id, name, role }) => [
        row(''),
        row(`${id}  ${name}, ${role}`),
        { ...row(line), keep: true },
      ]),
      row(''),
      row('End of the briefing. The job itself asks all of it again, live.', 'strong'),
    ],
  }
}
