// From definitions to a blank sheet: the front, every step in order, and what is filled in at the end.
import type { Definitions, PlacedStep, RecordKind } from '../job/definitions.ts'
import { checkMark } from '../job/paper.ts'
import type { Kit } from '../kit/kit.ts'
import { inInk } from '../lib/in-ink.ts'
import { clean } from '../lib/text.ts'
import { type BlankPiece, type BlankSection, type BlankSheet, GAP, words } from './blank.ts'
import { closeSections } from './close.ts'
import { frontSections } from './front.ts'
import { stepPieces } from './step.ts'

/** The day of the kit is the day that the sheet is printed for; `files` are those that the definitions were read from. */
export function blankOf(
  defs: Definitions,
  kit: Kit,
  record: RecordKind,
  files: Parameters<typeof checkMark>[0],
): BlankSheet {
  const { procedure, machine } = defs
  return cleaned({
    record,
    title: `${procedure.title}: ${machine.machine}`,
    procedure: `${procedure.procedure}, edition ${procedure.edition}`,
    machine: `${machine.machine}, record edition ${machine.edition}`,
    day: kit.day,
    mark: checkMark(files),
    sections: [...frontSections(defs, kit, record), ...stepSections(defs), ...closeSections(defs)],
  })
}

/** A section for each part of the whole, and for what stands between them. */
function stepSections(defs: Definitions): BlankSection[] {
  const sections: { of: PlacedStep | undefined; title: string; pieces: BlankPiece[] }[] = []
  for (const [n, placed] of defs.steps.entries()) {
    const [part] = placed.inside
    const before = defs.steps[n - 1]
    if (sections.length === 0 || sections.at(-1)?.of !== part)
      sections.push({ of: part, title: part?.step.title ?? 'Steps', pieces: [] })
    const opened = placed.inside.slice(1).filter((one) => before?.inside.includes(one) !== true)
    sections
      .at(-1)
      ?.pieces.push(
        ...opened.map(({ step }) => words(`Part: ${step.title}`, 'strong')),
        ...stepPieces(defs, placed),
        GAP,
      )
  }
  return sections.map(({ title, pieces }) => ({ title, pieces }))
}

/** What cannot be seen and would change what is, is `?` in every text, and what is keyed is written: no writer has to think of it. */
function cleaned<T>(value: T): T {
  if (typeof value === 'string') return clean(inInk(value)) as T
  if (Array.isArray(value)) return value.map(cleaned) as T
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, cleaned(inner)])) as T
}
