// barover check: are these files fit to be taken to a machine?
import { readdirSync, statSync } from 'node:fs'
import { dirname, isAbsolute, join, normalize } from 'node:path'
import process from 'node:process'
import type { GoodJob, TextFile } from '../../authoring/check.ts'
import type { Disk } from '../../authoring/folder.ts'
import { pathLines, type Safety, type SearchedBefore, safetyLine, safetyOf } from '../../authoring/safety.ts'
import { type CheckedTogether, checkTogether } from '../../authoring/together.ts'
import { wrapWords } from '../../authoring/wrap-words.ts'
import { readTextFile } from '../../node/definition-files.ts'
import { shippedMachine, shippedProcedure } from '../../node/home.ts'
import { UserError } from '../../node/user-error.ts'
import { type Command, SHARED } from '../args.ts'
import { EXIT } from '../exit.ts'
import { renderAt } from '../open.ts'
import { searchJob } from '../search.ts'
import { columnsOf, print } from '../terminal.ts'

export const checkCommand: Command = {
  name: 'check',
  usage: 'barover check FILE...',
  summary:
    'Check procedures, machine records, limit books, instruments, crew and practice scenarios; a folder means all YAML files in it. ' +
    'A machine record is also checked with the files it uses, and with every procedure given: ' +
    'every way through such a job is then searched for one that leads past a gate.',
  options: {
    anew: { type: 'boolean', says: 'search everything again, also what this program has searched before' },
    json: SHARED.json,
  },
  positionals: { least: 1, most: 10_000 },
  run: async (values, paths) => {
    const wanted = [...new Set(paths.map((path) => normalize(path)).flatMap(yamlIn))]
    const files = wanted.map((path): TextFile => ({ path, text: readTextFile(path) }))
    if (files.length === 0) throw new UserError('There is no YAML file to check there.', EXIT.fileProblem)
    const checked = checkTogether(files, disk)
    const searched: Timed[] = []
    // Said as it is found: the search of a folder of procedures takes a while.
    const search = async (job: GoodJob): Promise<Timed> => {
      const one = await timed(job, values.anew === true)
      searched.push(one)
      return one
    }
    if (values.json === true) {
      for (const job of checked.sound) await search(job)
      print(asJson(checked, searched))
    } else for await (const text of asText(checked, search, columnsOf(process.stdout))) print(text)
    const isClean = checked.diagnostics.every((d) => d.severity !== 'error')
    return isClean && searched.every((one) => one.safety.proof.is === 'proved') ? EXIT.done : EXIT.checkFailed
  },
}

const disk: Disk = {
  read: (path) => {
    try {
      return readTextFile(path)
    } catch (error) {
      if (error instanceof UserError) return undefined
      throw error
    }
  },
  resolve: (from, name) => (isAbsolute(name) ? normalize(name) : join(dirname(from), name)),
  beside: (path) => {
    try {
      return namesIn(dirname(path))
        .filter((one) => one.isFile() && isYaml(one.name))
        .map((one) => join(dirname(path), one.name))
    } catch {
      return []
    }
  },
  shipped: (kind, name) =>
    (kind === 'procedure' ? shippedProcedure(name) : shippedMachine(name)) ?? undefined,
}

interface Timed {
  readonly safety: Safety
  readonly seconds: number
  readonly searched: SearchedBefore
}

async function timed(job: GoodJob, anew: boolean): Promise<Timed> {
  const start = performance.now()
  // Where it does not hold together it comes to no search.
  let searched: SearchedBefore = { pieces: 0, kept: 0 }
  const safety = await safetyOf(job, async (defs, files) => {
    const { proof, pieces, kept } = await searchJob(defs, files, { anew })
    searched = { pieces, kept }
    return proof
  })
  return { safety, seconds: (performance.now() - start) / 1000, searched }
}

function asJson(checked: CheckedTogether, searched: readonly Timed[]): string {
  const { kinds, diagnostics, jobs, refusals, alone } = checked
  const safety = searched.map(({ safety: { procedure, machine, proof }, searched: { pieces, kept } }) => ({
    procedure,
    machine,
    ...proof,
    pieces,
    searchedBefore: kept,
  }))
  const found = searched.flatMap((one) => one.safety.diagnostic ?? [])
  return JSON.stringify({
    files: Object.fromEntries(kinds),
    jobs,
    refusals,
    safety,
    notSearched: alone,
    diagnostics: [...diagnostics, ...found],
  })
}

/** What is printed, in order; each job is searched when its line is asked for. */
async function* asText(
  checked: CheckedTogether,
  search: (job: GoodJob) => Promise<Timed>,
  columns: number,
): AsyncGenerator<string, void, void> {
  const { files, diagnostics, jobs, sound, waiting, refusals, alone, isStoppedEarly } = checked
  const sentence = (text: string) => wrapWords(text, columns, 2)
  const texts = new Map(files.map((f) => [f.path, f.text]))
  for (const d of diagnostics) yield `${renderAt(d, texts.get(d.file) ?? '', d.file)}\n`
  yield* refusals.map(sentence)
  for (const machine of new Set(jobs.map((job) => job.machine))) {
    const own = jobs.filter((job) => job.machine === machine).map((job) => job.procedure)
    yield sentence(`Checked as a job on the machine ${machine}: ${own.join(', ')}.`)
  }
  let unsafe = 0
  for (const job of sound) {
    const { safety, seconds, searched } = await search(job)
    if (safety.diagnostic !== null) unsafe += 1
    yield* breachText(safety, texts)
    yield sentence(safetyLine(safety, seconds, searched))
  }
  for (const id of alone)
    yield sentence(`Safety of ${id}: NOT SEARCHED. Check it together with the record of a machine it takes.`)
  if (waiting.length > 0) yield sentence(`Not yet as a job: ${waiting.join(', ')}; errors above.`)
  const errors = diagnostics.filter((d) => d.severity === 'error').length
  const warnings = diagnostics.length - errors
  yield `${count(files.length, 'file')} checked, ${count(errors + unsafe, 'error')}, ${count(warnings, 'warning')}.`
  if (isStoppedEarly) yield 'More may show once these are right.'
}

function breachText({ diagnostic, proof }: Safety, texts: ReadonlyMap<string, string>): string[] {
  if (diagnostic === null) return []
  const shown = renderAt(diagnostic, texts.get(diagnostic.file) ?? '', diagnostic.file)
  if (proof.is !== 'refuted') return [`${shown}\n`]
  return [
    [shown, '', '  M is a mechanic, L a lead, T a trainee:', ...pathLines(proof.breach.path), ''].join('\n'),
  ]
}

function count(number: number, noun: string): string {
  return `${number} ${noun}${number === 1 ? '' : 's'}`
}

function namesIn(folder: string) {
  return readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1))
}

function isYaml(name: string): boolean {
  return /\.ya?ml$/.test(name)
}

function yamlIn(path: string): string[] {
  let isFolder: boolean
  try {
    isFolder = statSync(path).isDirectory()
  } catch {
    const shipped = shippedProcedure(path)
    if (shipped !== null) return [shipped]
    throw new UserError(`${path}: there is no such file.`, EXIT.fileProblem)
  }
  if (!isFolder) return [path]
  return namesIn(path).flatMap((one) => {
    if (one.isDirectory() && !one.name.startsWith('.') && one.name !== 'node_modules')
      return yamlIn(join(path, one.name))
    return one.isFile() && isYaml(one.name) ? [join(path, one.name)] : []
  })
}
