// Which machine a record is of. Block, locks and people belong to the whole compressor; a record is of one cylinder.

export interface MachineId {
  readonly tag: string
  /** Tag of the compressor it is part of; null where the record does not say. */
  readonly compressor: string | null
}

export function machineIdOf(machine: {
  readonly machine: string
  readonly compressor?: string | undefined
}): MachineId {
  return { tag: machine.machine, compressor: machine.compressor ?? null }
}

/** TC-401, tc401 and TC.401 are one tag. */
const plain = (tag: string) => tag.toUpperCase().replace(/[^A-Z0-9]/g, '')

/**
 * `other` only where both records name their compressor, and not the same. Where one of them names none they cannot be
 * told apart, which is `unknown`, unless they are records of one cylinder.
 */
export function sameMachine(one: MachineId, two: MachineId): 'same' | 'other' | 'unknown' {
  if (plain(one.tag) === plain(two.tag)) return 'same'
  if (one.compressor === null || two.compressor === null) return 'unknown'
  return plain(one.compressor) === plain(two.compressor) ? 'same' : 'other'
}
