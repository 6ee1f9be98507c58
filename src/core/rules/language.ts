// The expression language with nothing in it but what the tables say: one type for each kind, the operations between
// them, the functions and the written figures. Built once; each rule gets a copy with its own names.
import { Environment } from '@marcbachmann/cel-js'
import { CONVERSIONS, FUNCTIONS, type RuleFunction, WRITTEN_AS, workOut } from './functions.ts'
import { readLiteral } from './literal.ts'
import { FACT_TYPES } from './machine-facts.ts'
import { CLASS_OF, fault, type Measured, made } from './measured.ts'
import { COMPARE_OPS, COMPARED, NEGATED, OPERATIONS, type Operation } from './operators.ts'
import { typeOf, typeOfName } from './type-names.ts'

/** Far above any rule a person can read, far below what takes time. No rule loops, so its nodes bound its work. */
export const LIMITS = {
  maxAstNodes: 200,
  maxDepth: 20,
  maxListElements: 50,
  maxMapEntries: 30,
  maxCallArguments: 5,
}

/** The facts that one rule refers to, and nothing else of the record. */
export class MachineRecord {
  constructor(facts: Readonly<Record<string, unknown>>) {
    Object.assign(this, facts)
  }
}

let base: Environment | undefined

/** A copy to which names can be added. */
export function language(): Environment {
  base ??= build()
  return base.clone()
}

function build(): Environment {
  const env = new Environment({ limits: LIMITS })
  // With no fields named there is nothing to look into.
  for (const [operand, ctor] of CLASS_OF) env.registerType(typeOf(operand), { ctor, fields: {} })
  const facts = [...FACT_TYPES].map(([name, type]) => [name.slice('machine.'.length), typeOfName(type)])
  env.registerType('machine_record', { ctor: MachineRecord, fields: Object.fromEntries(facts) })
  env.registerVariable('machine', 'machine_record')
  for (const row of OPERATIONS) addOperation(env, row)
  for (const operand of NEGATED) {
    const type = typeOf(operand)
    env.registerOperator(`-${type}: ${type}`, (a: Measured) => made(operand, -a.si))
  }
  for (const operand of COMPARED) addComparisons(env, typeOf(operand))
  for (const fn of FUNCTIONS) addFunction(env, fn)
  for (const { name, from, to, sign } of CONVERSIONS) {
    const signature = `${name}(${typeOf(from)}, ${typeOf('pressure-absolute')}): ${typeOf(to)}`
    env.registerFunction(signature, (p: Measured, air: Measured) => {
      if (air.si === 0) throw fault('the barometric pressure is not above zero')
      return made(to, p.si + sign * air.si)
    })
  }
  for (const [name, kind] of WRITTEN_AS) {
    env.registerFunction(`${name}(string): ${typeOf(kind)}`, (text: string) => {
      const read = readLiteral(kind, text)
      if (!read.ok) throw fault(read.error.say)
      return made(kind, read.value.si)
    })
  }
  return env
}

const ARITHMETIC = {
  '+': (a: number, b: number) => a + b,
  '-': (a: number, b: number) => a - b,
  '*': (a: number, b: number) => a * b,
  '/': (a: number, b: number) => a / b,
}

function addOperation(env: Environment, { left, op, right, gives }: Operation): void {
  const work = ARITHMETIC[op]
  // Without the type it gives, the left operand's would be taken.
  env.registerOperator(
    `${typeOf(left)} ${op} ${typeOf(right)}: ${typeOf(gives)}`,
    (a: Measured, b: Measured) => made(gives, work(a.si, b.si)),
  )
}

function addComparisons(env: Environment, type: string): void {
  const work = {
    '<': (a: number, b: number) => a < b,
    '<=': (a: number, b: number) => a <= b,
    '>': (a: number, b: number) => a > b,
    '>=': (a: number, b: number) => a >= b,
  }
  for (const op of COMPARE_OPS) {
    env.registerOperator(`${type} ${op} ${type}: bool`, (a: Measured, b: Measured) => work[op](a.si, b.si))
  }
}

function addFunction(env: Environment, fn: RuleFunction): void {
  for (const [takes, gives] of fn.gives) {
    const [arg, out] = [typeOf(takes), typeOf(gives)]
    const signature = { list: `list<${arg}>`, one: arg, two: `${arg}, ${arg}` }
    for (const form of fn.forms) {
      const work =
        form === 'list'
          ? (figures: Measured[]) => workOut(fn, figures)
          : (...figures: Measured[]) => workOut(fn, figures)
      env.registerFunction(`${fn.name}(${signature[form]}): ${out}`, work)
    }
  }
}
