// What has to be known before anything in a report is used; on its first page, and never left out.
import type { Definitions } from '../../job/definitions.ts'
import type { OpenedBody } from '../../job/entries.ts'
import { NOT_ENFORCED_BY } from '../../job/paper.ts'
import { openStop, type State } from '../../job/state.ts'
import type { Review } from '../../review/review.ts'

export function cautionsOf(
  defs: Definitions,
  state: State,
  opened: OpenedBody,
  { exceptions }: Review,
): string[] {
  const isFallback = Object.values(state.verdicts).some(
    ({ void: fallen, verdict }) => !fallen && usesFallback(verdict),
  )
  const open = exceptions.filter((one) => one.open).length
  return [
    ...(state.paper === null
      ? []
      : [
          `From paper: ${NOT_ENFORCED_BY}. It is what stands on a sheet, keyed in afterwards; no hold point of it was ever open here.`,
        ]),
    ...(state.record === 'REAL' ? [] : [`${state.record}: this is no record of work on a machine.`]),
    ...(state.closed === null
      ? [
          'OPEN: the job is not closed, and what follows may still change. Nothing here is a release of the machine.',
        ]
      : []),
    ...(openStop(state) === null ? [] : ['UNDER STOP: everything is blocked until the STOP is released.']),
    ...(opened.answers === 'script'
      ? ['Its answers came from a file or a pipe: gates not enforced by Barover on a person.']
      : []),
    ...(opened.clock === 'set'
      ? ['Its clock was set by hand: no time in it tells when anything was done.']
      : []),
    ...(defs.machine.invented === true || defs.invented.length > 0
      ? ['Machine or procedure is invented: no figure of it holds for any machine.']
      : []),
    ...(open === 0 ? [] : [`${open} of the exceptions below ${open === 1 ? 'is' : 'are'} still open.`]),
    ...(isFallback ? ['Fall-back limits were used: the maker’s manual comes first.'] : []),
    'The maker’s manual, site permits, local code and licensed practice come first. Barover supports trained people; it replaces none of these.',
    'A log cannot show that what was keyed is true.',
  ]
}

function usesFallback(record: State['verdicts'][string]['verdict']): boolean {
  if (record.compute === 'bore_form')
    return record.result.judged.some(({ limit }) => limit?.from === 'fallback')
  if (record.compute === 'figures')
    return record.inputs.figures.some(({ limit }) => limit?.from === 'fallback')
  return false
}
