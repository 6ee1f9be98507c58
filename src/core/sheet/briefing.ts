// The job briefing: every step read through with the crew before a lock goes on. It is paper and no part of any job:
// nothing is asked, nothing goes on record, and NOT LIVE stands on each line.
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import type { Kit } from '../kit/kit.ts'
import { kitBeforeJob, peopleLines } from '../kit/words.ts'
import { type Block, row, type SheetStyle, textWidth } from './block.ts'
import { briefingStep } from './briefing-step.ts'

export function briefingBlocks(defs: Definitions, kit: Kit, style: SheetStyle): Block[] {
  return [
    headBlock(defs, kit),
    SPACE,
    dangerBlock(defs),
    SPACE,
    { margin: '', rows: [row('Who does what', 'strong'), ...peopleLines(kit).map((line) => row(line))] },
    ...defs.steps.flatMap((placed, i) => [
      SPACE,
      ...partHead(placed, defs.steps[i - 1]),
      briefingStep(defs, placed),
    ]),
    SPACE,
    signBlock(defs, style),
  ]
}

const SPACE: Block = { margin: '', rows: [row('')] }

function headBlock({ procedure, machine, steps }: Definitions, kit: Kit): Block {
  const kitWords = kitBeforeJob(kit)
  return {
    margin: '',
    rows: [
      row('JOB BRIEFING', 'strong'),
      row(`${procedure.title}, edition ${procedure.edition}`, 'strong'),
      row(`${machine.machine}, ${machine.title}${machine.invented === true ? ', invented' : ''}`),
      row(procedure.summary),
      row(`${steps.length} steps. It opens no hold point, takes no reading and is no permit.`),
      row(
        'The maker’s manual, site permits, local code and licensed practice come first. Barover helps trained people; it replaces none of these.',
        'caution',
      ),
      ...procedure.not_for.map((not) => row(`Not for: ${not}`)),
      ...kitWords.lines.map((line) => row(line, kitWords.wrong ? 'caution' : 'plain')),
    ],
  }
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
