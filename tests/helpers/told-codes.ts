// What check says of a shipped file with one thing changed: each code, with the line it points at.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { checkFiles } from '../../src/authoring/check.ts'
import { ROOT } from './example.ts'

export function toldCodes(path: string, from: string | RegExp, to: string): string[] {
  const text = readFileSync(join(ROOT, path), 'utf8')
  const changed = text.replace(from, to)
  if (changed === text) throw new Error(`${path} holds no ${from}`)
  const { diagnostics } = checkFiles([{ path, text: changed }])
  return diagnostics.map((one) => `${one.code} ${changed.split('\n')[one.line - 1]?.trim() ?? ''}`)
}
