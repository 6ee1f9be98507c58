// Words for the kind of pocket that a cylinder has, as machine records and observe steps of procedures write them.

export const POCKET_FITTED = ['none', 'open', 'two_position', 'hand_wheel'] as const
export type PocketFitted = (typeof POCKET_FITTED)[number]
