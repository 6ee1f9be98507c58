// barover compute: one computation worked out by itself, with its arithmetic shown.
import type { Computation } from '../../core/compute/computation.ts'
import { EXAMPLES } from '../../core/compute/examples.ts'
import { computedJson, describeJson } from '../../core/compute/json.ts'
import { readInputs } from '../../core/compute/read-inputs.ts'
import { compute, findComputation, GROUPS } from '../../core/compute/registry.ts'
import { type ShowStyle, showComputed, showList, showUse } from '../../core/compute/show.ts'
import type { Refusal, Result } from '../../core/lib/result.ts'
import { UserError } from '../../node/user-error.ts'
import { type Command, SHARED, type Values } from '../args.ts'
import { EXIT } from '../exit.ts'
import { print, sheetStyle } from '../terminal.ts'

export const computeCommand: Command = {
  name: 'compute',
  usage: 'barover compute [NAME [key=value ...]]',
  summary: 'Work out one figure with its arithmetic and source; without a name, list what can be worked out.',
  options: { json: SHARED.json, ascii: SHARED.ascii },
  positionals: { least: 0, most: 200 },
  run: async (values, [name, ...words]) => {
    if (name === undefined) return listAll(values)
    const computation = orWrongUse(findComputation(name), 'barover compute')
    return words.length === 0 ? describe(computation, values) : workOut(computation, words, values)
  },
}

function listAll(values: Values): number {
  if (values.json !== true) say(showList(GROUPS, style(values)))
  else {
    const groups = GROUPS.map((g) => ({ group: g.title, computations: g.computations.map(describeJson) }))
    print(JSON.stringify(groups))
  }
  return EXIT.done
}

function describe(computation: Computation, values: Values): number {
  const example = EXAMPLES[computation.name] ?? []
  if (values.json === true) print(JSON.stringify({ ...describeJson(computation), example }))
  else say(showUse(computation, example, style(values)))
  return EXIT.done
}

/** 0 worked out, 1 refused by the computation, 2 (thrown) when what was keyed cannot be read. */
function workOut(computation: Computation, words: readonly string[], values: Values): number {
  const read = orWrongUse(readInputs(computation, words), `barover compute ${computation.name}`)
  const computed = compute(computation, read.values)
  if (!computed.ok) return refused(computation, computed.error, values)
  if (values.json === true) print(JSON.stringify(computedJson(computation, read.values, computed.value)))
  else say(showComputed(computation, read.values, computed.value, style(values), read.assumed))
  return EXIT.done
}

function refused(computation: Computation, error: Refusal, values: Values): number {
  if (values.json === true) print(JSON.stringify({ computation: computation.name, refused: error }))
  else say([`Not worked out: ${computation.title}.`, error.say])
  return EXIT.checkFailed
}

function orWrongUse<T>(result: Result<T>, hint: string): T {
  if (result.ok) return result.value
  throw new UserError(result.error.say, EXIT.wrongUse, hint)
}

function style(values: Values): ShowStyle {
  const { width, ascii } = sheetStyle(values, 'EXAMPLE')
  return { width, ascii }
}

function say(lines: readonly string[]): void {
  print(lines.join('\n'))
}
