// The files that an author has after the lesson, checked, assembled and walked as they would be on disk.
import { readFileSync } from 'node:fs'
import { join, normalize } from 'node:path'
import { definitionsFrom } from '../../src/authoring/definitions.ts'
import type { Disk } from '../../src/authoring/folder.ts'
import { checkTogether } from '../../src/authoring/together.ts'
import type { Definitions } from '../../src/core/job/definitions.ts'
import type { FileCopy } from '../../src/core/job/entries.ts'
import { layOut, plainText } from '../../src/core/sheet/block.ts'
import { entryBlocks } from '../../src/core/sheet/shown-block.ts'
import { readAnswers } from '../../src/plain/answers.ts'
import { fileCopies, ROOT, Walk } from '../helpers/example.ts'

export const PROCEDURE = 'mine/my-check.yaml'
export const PART = 'mine/count-tools.yaml'
export const MACHINE = 'examples/tc-401/machine.yaml'

export function check(files: ReadonlyMap<string, string>, ...more: string[]) {
  const disk: Disk = {
    read: (path) =>
      files.get(path) ?? (path.startsWith('mine/') ? undefined : readFileSync(join(ROOT, path), 'utf8')),
    resolve: (from, name) => normalize(join(from, '..', name)),
    beside: (path) => [...files.keys()].filter((one) => join(one, '..') === join(path, '..')),
  }
  const given = [...files.keys(), ...more].map((path) => ({ path, text: disk.read(path) ?? '' }))
  return checkTogether(given, disk)
}

export function defsOf(files: ReadonlyMap<string, string>): Definitions {
  const own = (role: FileCopy['role'], path: string): FileCopy[] => {
    const text = files.get(path)
    return text === undefined ? [] : [{ role, name: path, sha256: '', text }]
  }
  const rest = fileCopies().filter((file) => file.role !== 'procedure')
  const result = definitionsFrom([...own('procedure', PROCEDURE), ...own('part', PART), ...rest])
  if (!result.ok) throw new Error(result.diagnostics.map((one) => one.message).join('\n'))
  return result.defs
}

/** The answers of a file, as they are keyed. */
export function answersIn(text: string): string[] {
  const lines = readAnswers(text, 'answers')
  if (!lines.ok) throw new Error(lines.error.say)
  return lines.value.flatMap((line) =>
    line.kind === 'answer' ? [line.text === 'done' ? '' : line.text] : [],
  )
}

/** A walk whose PINs are keyed like all else. */
export function byHand(text: string): Walk {
  const walk = new Walk(defsOf(new Map([[PROCEDURE, text]])), 'PRACTICE')
  walk.autoPin = false
  return walk
}

export const STYLE = { width: 79, record: 'PRACTICE' as const, ascii: true }

/** What the walk prints, without the margin. */
export function printedBy(walk: Walk): string {
  return walk.entries
    .flatMap((entry) => entryBlocks(walk.engine.defs, walk.state, entry, STYLE))
    .map((block) => plainText(layOut(block, STYLE)).replace(/^.*?\| /gm, ''))
    .join('\n')
}
