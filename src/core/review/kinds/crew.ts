// Who signed, and whether it was they: a crew file that is not that of the job before, wrong PINs, initials alone.
import type { Crew, Person } from '../../definition/crew.ts'
import { list } from '../../lib/wording.ts'
import type { Found } from '../exception.ts'
import { count, entriesOf, type Look } from '../look.ts'

export function crewQuestions(look: Look): Found[] {
  return [...crewFile(look), ...missedPins(look), ...initialsAlone(look)]
}

function crewFile({ beside: { crewBefore }, defs }: Look): Found[] {
  if (crewBefore === null) return []
  const changes = crewChanges(crewBefore.crew, defs.crew)
  if (changes.length === 0) return []
  return [
    {
      kind: 'crew',
      what: `The crew file is not that of the job before: ${changes[0]}${changes.length === 1 ? '' : `, and ${changes.length - 1} more`}`,
      sentences: [
        ...changes.map((change) => `${change}.`),
        `It is held against ${crewBefore.job}, the last job before this one on the machine. Whoever changes the file can sign for others.`,
      ],
      entries: [0],
      open: false,
      grave: 0,
    },
  ]
}

/** What is not as it was, a clause each; names of people and no keys. */
export function crewChanges(before: Crew, now: Crew): string[] {
  const was = new Map(before.crew.map((person) => [person.id, person]))
  const ids = new Set(now.crew.map(({ id }) => id))
  return [
    ...now.crew.flatMap((person) => {
      const old = was.get(person.id)
      return old === undefined ? [`${person.id} was added as ${person.role}`] : personChanges(old, person)
    }),
    ...before.crew.flatMap(({ id }) => (ids.has(id) ? [] : [`${id} was taken out`])),
  ]
}

function personChanges(old: Person, now: Person): string[] {
  return [
    ...(old.role === now.role ? [] : [`${now.id} is ${now.role} and was ${old.role}`]),
    ...(old.name === now.name ? [] : [`${now.id} is ${now.name} and was ${old.name}`]),
    ...(old.pin === now.pin
      ? []
      : [
          now.pin === undefined
            ? `${now.id} has no key any more`
            : old.pin === undefined
              ? `${now.id} was given a key`
              : `${now.id} has another key`,
        ]),
  ]
}

function missedPins(look: Look): Found[] {
  const missed = entriesOf(look, 'pin.missed')
  return [...new Set(missed.map((e) => e.person))].map((person) => {
    const entries = missed.filter((e) => e.person === person).map((e) => e.seq)
    return {
      kind: 'crew',
      what: `${count(entries.length, 'wrong PIN')} for ${person}`,
      sentences: ['A slip of the fingers, or somebody else trying: the log cannot tell.'],
      entries,
      open: false,
      grave: 1,
    }
  })
}

function initialsAlone(look: Look): Found[] {
  const alone = look.entries.flatMap((e) => {
    const signers: string[] = []
    if (e.type === 'job.handed-over') {
      if (e.signedFrom === 'initials') signers.push(e.from)
      if (e.signedTo === 'initials') signers.push(e.to)
    } else if (e.type === 'disposition.set' && e.radio !== undefined) {
      if (e.signed === 'initials') signers.push(e.radio.by)
    } else if ('signed' in e && e.signed === 'initials' && 'person' in e && e.person !== undefined) {
      signers.push(e.person)
    }
    return signers.map((person) => ({ person, seq: e.seq }))
  })
  if (alone.length === 0) return []
  const people = [...new Set(alone.map(({ person }) => person))]
  return [
    {
      kind: 'crew',
      what: `Signed by initials alone, without a PIN: ${list(people)}`,
      sentences: [`${count(alone.length, 'signature')}: the crew file held no key for them.`],
      entries: alone.map(({ seq }) => seq),
      open: false,
      grave: 2,
    },
  ]
}
