// Breaks each safety rule on purpose, as tests/mutants lists them, and runs the test that is to notice: `npm run mutants`.
// A word behind it takes only the rules that speak of it: `npm run mutants -- witness`. Ends with 1 when a break goes unnoticed.
// Nothing is written: a broken file is put in place of the real one as vitest reads it.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { createVitest } from 'vitest/node'
import { bundled } from './bundled.mjs'

const ROOT = import.meta.dirname
/** A run that has not ended by then hangs: that is no test noticing anything. */
const HANGS_AFTER_MS = 60_000

const { MUTANTS, staleWhy, titlePattern } = await bundled('tests/mutants/list.ts')

const words = process.argv.slice(2).map((word) => word.toLowerCase())
const chosen = MUTANTS.filter((mutant) => words.every((word) => saysOf(mutant).includes(word)))
const stale = chosen.flatMap((mutant) => staleWhy(mutant, read) ?? [])
for (const line of stale) console.log(line)
if (chosen.length === 0) console.log('No rule speaks of that.')
if (chosen.length === 0 || stale.length > 0) process.exit(1)

/** The one in place now: its file reads broken. */
let broken = null
const plugin = {
  name: 'mutants',
  enforce: 'pre',
  transform(text, id) {
    const file = broken === null ? null : join(ROOT, broken.file)
    // The function keeps `$` in the code from being read as a group.
    return id.split('?')[0] === file ? text.replace(broken.find, () => broken.into) : undefined
  },
}
/** What ended in this run: vitest itself keeps what earlier runs came to beside it. */
let ended = []
let unhandled = []
const reporter = {
  onTestModuleEnd: (module) => ended.push(module),
  onTestRunEnd: (_modules, errors) => unhandled.push(...errors),
}
const vitest = await createVitest(
  'test',
  // Without the file of settings: its projects have servers of their own, which would read the files unbroken.
  {
    config: false,
    root: ROOT,
    watch: false,
    reporters: [reporter],
    passWithNoTests: true,
    testTimeout: 30_000,
  },
  { plugins: [plugin] },
)
await vitest.standalone()
const project = vitest.getRootProject()

const failures = []
for (const [file, titles] of titlesByFile(chosen)) {
  const { failed, errors, passed } = await run(file, titles)
  if (failed.length > 0 || errors.length > 0 || passed === 0)
    failures.push(`${file}: ${failed[0]?.name ?? errors[0] ?? 'no such test'}`)
}
if (failures.length > 0) {
  console.log('Unbroken, these have to pass first:')
  for (const failure of failures) console.log(`  ${failure}`)
  await leave(1)
}

const outcomes = []
for (const mutant of chosen) {
  broken = mutant
  vitest.invalidateFile(join(ROOT, mutant.file))
  const outcome = noticed(await run(mutant.test.in, [mutant.test.title]))
  broken = null
  vitest.invalidateFile(join(ROOT, mutant.file))
  outcomes.push(outcome)
  console.log(`${outcome.caught ? 'caught  ' : 'SURVIVED'}  ${mutant.rule}`)
  console.log(`          ${mutant.file}`)
  console.log(`          ${outcome.caught ? `${mutant.test.in}: ${outcome.by}` : outcome.by}`)
}
const survived = outcomes.filter((outcome) => !outcome.caught).length
console.log(`${outcomes.length} rules broken, ${outcomes.length - survived} caught, ${survived} survived`)
await leave(survived === 0 ? 0 : 1)

/** Only a test that ran and failed has noticed: a file that no longer loads tells nothing about its rule. */
function noticed({ failed, errors }) {
  const [first] = failed
  if (first === undefined) return { caught: false, by: errors[0] ?? 'its test passes all the same' }
  if (errors.length > 0) return { caught: false, by: `does not run: ${errors[0]}` }
  return first.error.startsWith('ReferenceError') || first.error.startsWith('SyntaxError')
    ? { caught: false, by: `does not run: ${first.error}` }
    : { caught: true, by: first.name, error: first.error }
}

async function run(file, titles) {
  const testNamePattern = titlePattern(titles)
  const hangs = setTimeout(() => {
    console.log(`Does not end: ${broken?.rule ?? file}`)
    process.exit(1)
  }, HANGS_AFTER_MS)
  ended = []
  unhandled = []
  await vitest.runTestSpecifications([project.createSpecification(join(ROOT, file), { testNamePattern })])
  clearTimeout(hangs)
  const tests = ended.flatMap((module) => [...module.children.allTests()])
  const failed = tests
    .filter((test) => test.result().state === 'failed')
    .map((test) => ({ name: test.fullName, error: firstLine(test.result().errors[0]) }))
  const errors = [...ended.flatMap((module) => module.errors()), ...unhandled].map(firstLine)
  return { failed, errors, passed: tests.filter((test) => test.result().state === 'passed').length }
}

function firstLine(error) {
  return `${error?.name ?? 'Error'}: ${String(error?.message ?? error).split('\n')[0]}`
}

function titlesByFile(mutants) {
  const files = new Map()
  for (const { test } of mutants) files.set(test.in, [...(files.get(test.in) ?? []), test.title])
  return files
}

function saysOf({ rule, file, test }) {
  return `${rule} ${file} ${test.in} ${test.title}`.toLowerCase()
}

function read(path) {
  return readFileSync(join(ROOT, path), 'utf8')
}

async function leave(exitCode) {
  await vitest.close()
  process.exit(exitCode)
}
