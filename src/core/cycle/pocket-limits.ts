// The limits of a machine on load, and how each is called.

const TEXTS = {
  'driver-power': 'driver power',
  'rod-load': 'rod load',
  'pin-load': 'load at the pin',
  reversal: 'reversal at the pin',
  'discharge-temperature': 'discharge temperature',
  capacity: 'what an end draws',
} as const

export type PocketLimit = keyof typeof TEXTS
export const POCKET_LIMITS = Object.keys(TEXTS) as [PocketLimit, ...PocketLimit[]]

export const isPocketLimit = (id: string): id is PocketLimit => id in TEXTS
export const pocketLimitText = (id: PocketLimit): string => TEXTS[id]
