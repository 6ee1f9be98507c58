// The procedures that can be practised, by their ids: those whose every step a hidden machine answers, and that are worked alone.

export const PRACTISED = [
  'bore_inspection',
  'rod_sizes',
  'ring_fit',
  'rings_in_bore',
  'isolation',
  'vent_and_purge',
  'open_cylinder',
  'hollow_piston',
  'piston_on_rod',
  'put_back',
  'pocket_load',
  'set_pocket',
] as const

/** As they are called on a command line. */
export const PRACTISED_NAMES: readonly string[] = PRACTISED.map((id) => id.replaceAll('_', '-'))

export function isPractised(procedure: string): boolean {
  return PRACTISED.some((one) => one === procedure)
}
