// A small job in which a side clearance is read, judged and decided on, and read again as left where that is wanted.
import { Walk } from './example.ts'
import { type Raw, smallDefs } from './small-job.ts'

export function readGrooves(id: string, stage: string): Raw {
  return {
    id,
    kind: 'read',
    title: id,
    quantity: 'length',
    of: 'side clearance',
    with: 'feelers',
    drawing: 'none',
    stage,
    stations: [{ id: 'all', label: 'all grooves', at: 0.5 }],
    how: {},
    repeats: { at_least: 1, at_most: 1, within: '0.001 in' },
    plausible: { from: 'range', least: '0 in', most: '1 in' },
  }
}

function judgedGrooves(id: string, is: string): Raw[] {
  return [
    {
      id,
      kind: 'judge',
      title: id,
      compute: 'figures',
      figures: [{ characteristic: 'ring-side-clearance', is }],
    },
    {
      id: `${id}_decided`,
      kind: 'decide',
      title: 'Grooves',
      when: { rule: `${id} != "ACCEPT"`, unknown: 'do' },
      about: id,
      choices: ['accept', 'rework', 'replace', 'concession', 'hold'],
    },
  ]
}

/** At its first reading. `more` stands behind all of it. */
export function grooves(again: boolean, more: readonly Raw[] = []): Walk {
  const first = [readGrooves('worn', 'as_found'), ...judgedGrooves('worn_judged', 'worn')]
  const second = again ? [readGrooves('fresh', 'as_left'), ...judgedGrooves('fresh_judged', 'fresh')] : []
  const seats = [{ id: 'feelers', kinds: ['feeler_gauge'], for: 'gaps' }]
  const defs = smallDefs([...first, ...second, ...more], [], {}, { seats })
  return new Walk(defs, 'PRACTICE').keys('RO', 'TC-401-1', '1')
}
