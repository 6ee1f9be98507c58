// The keys of the shipped example crews, by their salts. Their PINs are printed beside them, so they prove nothing about
// anybody and must never sign a REAL job, whatever crew file they were copied into.
import type { Person } from '../definition/crew.ts'

const SALTS: readonly string[] = [
  'izGCZN6aZxNlI/dXXWbLsw',
  'lpq2ojmH1OGefdvrRDNN4Q',
  '+QV2EKzNeqtNjiWZTP1hiA',
  '24hEeadn5i5t+/iKQNwxRg',
  'YvJxm+Ko5b0TytB4JhC5gg',
  'HhIE+AAPfyPVy44FpDuizQ',
  'ZxsIL6FIdTSsvMKr3wIYQA',
  'hTjqG8EyDb/+A5136d6fGg',
  '4YIdBSCnoppN6ljLf2eqXw',
  'Dbr+fCXyv1w0rdKMfYiaIw',
]

export function isExampleKey(pin: Person['pin']): boolean {
  return pin !== undefined && SALTS.some((salt) => pin.includes(`$${salt}$`))
}
