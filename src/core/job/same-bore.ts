// Which overhauls are of the bore as it is now: a bore that was relined, cut, or given another running surface begins anew.
import type { Machine } from '../definition/machine.ts'

type Overhaul = NonNullable<Machine['overhauls']>[number]

/** Overhauls by day whose figures are of the bore as it is now, and when it was last made new or cut, if that is on record. */
export function sameBore(machine: Machine): {
  readonly overhauls: readonly Overhaul[]
  readonly cut: Overhaul | null
} {
  const all = [...(machine.overhauls ?? [])].sort((a, b) => (a.day < b.day ? -1 : 1))
  const other = all.findLastIndex(({ bore_material: material }) => isOther(machine, material))
  const since = all.slice(other + 1)
  const cut = since.findLastIndex(({ renewed = [] }) => renewed.includes('bore') || renewed.includes('liner'))
  return { overhauls: since.slice(Math.max(0, cut)), cut: since[cut] ?? all[other] ?? null }
}

/** Whether a running surface on record is another than that of today; one that is not named is that of today. */
export function isOther(machine: Machine, material: string | undefined): boolean {
  const plain = (text: string) => text.trim().toLowerCase()
  return material !== undefined && plain(material) !== plain(machine.bore.material)
}
