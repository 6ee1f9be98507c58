// What must hold of people at every moment, read off the entries alone: who is on the job, who signed, what was said by radio.
import type { Definitions } from '../../../src/core/job/definitions.ts'
import type { Entry } from '../../../src/core/job/entries.ts'
import type { Moment } from './invariants.ts'

/** Everybody on the job after these entries. */
export function peopleIn(entries: readonly Entry[]): readonly string[] {
  const on = new Set<string>()
  for (const e of entries) {
    if (e.type === 'person.signed-on' || e.type === 'person.came-on') on.add(e.person)
    if (e.type === 'person.signed-off') on.delete(e.person)
    if (e.type === 'job.handed-over') on.add(e.to).delete(e.from)
    if (e.type === 'job.left' || e.type === 'job.taken-up') on.clear()
  }
  return [...on]
}

// --- Who is on the job: read off the entries, and each change signed for by somebody who may. ------------------------

export function peopleAmiss({ defs, entries, state }: Moment): string[] {
  const found: string[] = []
  const on = new Set<string>()
  let doer: string | null = null
  const record = entries[0]?.type === 'job.opened' ? entries[0].record : 'REAL'
  const comes = (person: string, n: number) => {
    const role = defs.crew.crew.find((p) => p.id === person)?.role
    if (role === undefined || (role === 'trainee' && record !== 'PRACTICE'))
      found.push(`${person} came on, entry ${n}`)
    on.add(person)
  }
  for (const e of entries) {
    if (e.type === 'person.signed-on') comes(e.person, e.seq)
    if (e.type === 'person.signed-on') doer = e.person
    if (e.type === 'person.came-on') {
      if (doer === null || on.has(e.person)) found.push(`${e.person} came on out of turn, entry ${e.seq}`)
      comes(e.person, e.seq)
    }
    if (e.type === 'person.signed-off') {
      if (e.person === doer || !on.delete(e.person)) found.push(`${e.person} signed off, entry ${e.seq}`)
    }
    if (e.type === 'job.handed-over') {
      if (e.from !== doer || e.to === e.from || e.summary.length === 0)
        found.push(`handed over from ${e.from} to ${e.to}, entry ${e.seq}`)
      comes(e.to, e.seq)
      on.delete(e.from)
      doer = e.to
    }
    if (e.type === 'job.left' || e.type === 'job.taken-up') on.clear()
    if (e.type === 'job.taken-up') doer = null
    found.push(...unsigned(defs, e))
  }
  const same = [...state.people].sort().join() === [...on].sort().join() && state.doer === doer
  return same ? found : [...found, `on the job: ${state.people.join()}, by its entries ${[...on].join()}`]
}

/** A signature of somebody who has a key, given by initials alone. */
function unsigned(defs: Definitions, e: Entry): string[] {
  const signatures =
    e.type === 'job.handed-over'
      ? [
          { person: e.from, signed: e.signedFrom },
          { person: e.to, signed: e.signedTo },
        ]
      : 'signed' in e && 'person' in e
        ? [{ person: e.person, signed: e.signed }]
        : []
  return signatures.flatMap(({ person, signed }) => {
    const hasKey = defs.crew.crew.find((p) => p.id === person)?.pin !== undefined
    return hasKey && signed !== 'pin' ? [`${person} signed without a PIN, entry ${e.seq}`] : []
  })
}

// --- A word by radio: keyed by somebody on the job who did none of it, of a lead who did none either; closes nothing. --

export function radioAmiss({ defs, entries }: Moment): string[] {
  const found: string[] = []
  const open = new Map<string, string>()
  const readersOf = (n: number) =>
    new Set(entries.slice(0, n).flatMap((e) => (e.type.startsWith('reading.') ? [e.by] : [])))
  for (const [n, e] of entries.entries()) {
    if (e.type === 'disposition.set') {
      open.delete(e.step)
      if (e.radio === undefined) continue
      const { by } = e.radio
      const lead = defs.crew.crew.find((p) => p.id === e.person)?.role === 'lead'
      const doneBy = [...readersOf(n), e.by]
      const isOn = peopleIn(entries.slice(0, n)).includes(by)
      if (!lead || !isOn || by === e.person || doneBy.includes(by) || e.choice === 'concession')
        found.push(`by radio from ${e.person}, keyed by ${by}, entry ${e.seq}`)
      open.set(e.step, e.person)
    }
    if (e.type === 'disposition.countersigned') {
      if (open.get(e.step) !== e.person) found.push(`countersigned by ${e.person}, entry ${e.seq}`)
      open.delete(e.step)
    }
    if ('voids' in e) for (const step of e.voids) open.delete(step)
    // Under a STOP that stands the job ends with it open, and says so among what is open.
    if (e.type === 'job.closed' && e.outcome !== 'STOP' && open.size > 0)
      found.push(`closed with the word of ${[...open.values()].join()} open`)
  }
  return found
}
