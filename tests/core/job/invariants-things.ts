// The part of the invariants that is about what was placed on a job: read off the entries.
import type { Moment } from './invariants.ts'

// --- 8. What was placed is accounted for by two different people, and no job ends over it without a word. ------------

export function thingsForgotten({ defs, entries }: Moment): string[] {
  interface Open {
    seen: string | null
    readonly step: string | null
    readonly place: string | null
    isHandedOn: boolean
  }
  const open = new Map<number, Open>()
  const roleOf = (id: string) => defs.crew.crew.find((p) => p.id === id)?.role
  const found: string[] = []
  for (const e of entries) {
    if (e.type === 'thing.placed')
      open.set(e.seq, { seen: null, step: e.step, place: e.place ?? null, isHandedOn: false })
    // Gone back to, or done anew: it is in again, whoever saw it out before.
    if (e.type === 'step.reopened' || e.type === 'step.done' || e.type === 'step.confirmed') {
      const steps = [e.step, ...('voids' in e ? e.voids : [])]
      for (const thing of open.values())
        if (thing.place !== null && steps.includes(thing.step ?? '')) thing.seen = null
    }
    if (e.type === 'thing.seen') {
      const thing = open.get(e.of)
      if (thing === undefined || roleOf(e.person) === undefined) found.push(`nobody saw thing ${e.of}`)
      else thing.seen = e.person
    }
    if (e.type === 'thing.accounted') {
      const thing = open.get(e.of)
      const [first, second] = e.people
      const isSo = thing !== undefined && thing.seen === first && second === e.person && first !== second
      if (!isSo || roleOf(e.person) === undefined) found.push(`thing ${e.of} accounted for by ${e.people}`)
      open.delete(e.of)
    }
    if (e.type === 'things.handed-on') {
      if (roleOf(e.person) !== 'lead' || e.person === e.by) found.push(`handed on by ${e.person}`)
      for (const of of e.of) {
        const thing = open.get(of)
        if (thing !== undefined) thing.isHandedOn = true
      }
    }
    if (e.type === 'job.closed' && e.outcome !== 'STOP')
      for (const [seq, { place, isHandedOn }] of open)
        if (!isHandedOn && !(defs.procedure.leaves ?? []).includes(place ?? '-'))
          found.push(`closed over thing ${seq}`)
  }
  return found
}
