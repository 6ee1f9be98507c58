// The safety proof of each job that holds together, told where its author can put it right.
import type { Finding } from '../core/definition/lint-common.ts'
import { assemble, type Definitions } from '../core/job/definitions.ts'
import { quote } from '../core/lib/wording.ts'
import type { Breach, PathLine } from '../core/proof/explore.ts'
import { type Proof, prove } from '../core/proof/prove.ts'
import { type GoodJob, type GoodOf, partsOf } from './check.ts'
import type { JobCopy } from './definitions.ts'
import type { Diagnostic } from './diagnostic.ts'
import { locateFinding } from './locate.ts'
import type { YamlFile } from './read-yaml.ts'

export interface Safety {
  readonly procedure: string
  readonly machine: string
  readonly proof: Proof
  /** Where it is to be put right; null when it is proved. */
  readonly diagnostic: Diagnostic | null
}

/** How a job is searched: by its definitions, or by the files it was assembled from. */
export type SearchJob = (defs: Definitions, files: readonly JobCopy[]) => Proof | Promise<Proof>

/** `search` is the program's own proof, made here and now, unless said. */
export async function safetyOf(job: GoodJob, search: SearchJob = (defs) => prove(defs)): Promise<Safety> {
  const assembled = assemble(partsOf(job))
  const named = { procedure: job.procedure.value.procedure, machine: job.machine.value.machine }
  if (!assembled.ok) {
    const { code, say } = assembled.error
    const proof: Proof = { is: 'not-proved', bound: `it does not hold together: ${say}`, states: 0, moves: 0 }
    return {
      ...named,
      proof,
      diagnostic: locateFinding(job.procedure.yaml, { path: [], code, message: say }),
    }
  }
  const proof = await search(assembled.value, copiesOf(job))
  switch (proof.is) {
    case 'proved':
      return { ...named, proof, diagnostic: null }
    case 'refuted':
      return { ...named, proof, diagnostic: breachAt(job, proof.breach) }
    case 'not-proved': {
      const message = `The safety of ${quote(named.procedure)} is NOT PROVED: the search ended at its bound of ${proof.bound}.`
      const at = {
        path: ['procedure'],
        code: 'not-proved',
        message,
        hint: 'split it into shorter procedures',
      }
      return { ...named, proof, diagnostic: locateFinding(job.procedure.yaml, at) }
    }
  }
}

function copiesOf(job: GoodJob): JobCopy[] {
  const copy = (role: JobCopy['role'], { yaml }: { readonly yaml: YamlFile }): JobCopy => ({
    role,
    name: yaml.file,
    text: yaml.text,
  })
  return [
    copy('procedure', job.procedure),
    ...job.parts.map((one) => copy('part', one)),
    copy('machine', job.machine),
    copy('instruments', job.instruments),
    copy('crew', job.crew),
    ...job.limitBooks.map((one) => copy('limit-book', one)),
  ]
}

function breachAt(job: GoodJob, breach: Breach): Diagnostic {
  const { file, path } = stepAt(job, breach.step)
  const finding: Finding = {
    path,
    code: `unsafe-${breach.rule}`,
    message: `It can come to this: ${breach.say}.`,
    hint: 'the answers that lead there are listed below',
  }
  return locateFinding(file.yaml, finding)
}

/** The file and path of a step by its id in the whole job: a step of a part carries the part's id before its own. */
function stepAt(
  job: GoodJob,
  id: string | null,
): { readonly file: GoodOf<'procedure'>; readonly path: Finding['path'] } {
  let file = job.procedure
  let path: (string | number)[] = ['procedure']
  for (const name of id?.split('__') ?? []) {
    const index = file.value.steps.findIndex((s) => s.id === name)
    const step = file.value.steps[index]
    if (step === undefined) break
    path = ['steps', index, 'id']
    const part = step.kind === 'part' ? job.parts.find((p) => p.value.procedure === step.use) : undefined
    // An id that ends at the part itself is about the step that uses it.
    if (part === undefined || id === name || id?.endsWith(`__${name}`) === true) break
    file = part
  }
  return { file, path }
}

/** The answers that lead to a breach, numbered, one a line. */
export function pathLines(path: readonly PathLine[]): string[] {
  const width = String(path.length).length
  return path.map(({ says, step }, n) => {
    const asked = step === null ? '' : `${step}: `
    return `  ${String(n + 1).padStart(width)}  ${asked}${says === '' ? '(nothing)' : says}`
  })
}

/** Of how many pieces a search is, and how many of them are an earlier one's. */
export interface SearchedBefore {
  readonly pieces: number
  readonly kept: number
}

/** One line on what was searched. The seconds are for people; no program should look at them. */
export function safetyLine(
  { procedure, machine, proof }: Safety,
  seconds: number,
  { pieces, kept }: SearchedBefore,
): string {
  const before = kept === 0 ? '' : `, ${kept} of ${pieces} pieces of them earlier, the rest`
  const searched = `${grouped(proof.states)} states and ${grouped(proof.moves)} moves searched${before} in ${seconds.toFixed(1)} s`
  const head = `Safety of ${procedure} on ${machine}: `
  switch (proof.is) {
    case 'proved':
      return `${head}${searched}; nobody is sent to a hazard whose gate is not fresh.`
    case 'refuted':
      return `${head}REFUTED after ${searched}: ${proof.breach.say}.`
    case 'not-proved':
      return `${head}NOT PROVED, bound of ${proof.bound}; ${searched}.`
  }
}

function grouped(n: number): string {
  return String(n).replace(/\B(?=(\d{3})+$)/g, ',')
}
