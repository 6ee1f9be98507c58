// Walks a zod schema beside the value it was given, to know which keys and choices an author could have meant.
import { z } from 'zod'
import type { Step } from './node-at.ts'

/** The schema that stands for `path`; of several alternatives the one that the value's own discriminator chooses. */
export function schemaAt(schema: z.ZodType, value: unknown, path: readonly Step[]): z.ZodType | undefined {
  let here: z.ZodType | undefined = choose(schema, value)
  let seen = value
  for (const step of path) {
    if (here === undefined) return undefined
    const inner = stepInto(here, step)
    seen = childOf(seen, step)
    here = inner === undefined ? undefined : choose(inner, seen)
  }
  return here
}

/** Keys an object schema knows, in its own order. */
export function keysOf(schema: z.ZodType | undefined): string[] {
  return schema instanceof z.ZodObject ? Object.keys(schema.shape) : []
}

/** True for a text that becomes a quantity: it may hold figures only together with a unit. */
export function isWritten(schema: z.ZodType | undefined): boolean {
  if (schema instanceof z.ZodUnion) return schema.options.every((option) => isWritten(option as z.ZodType))
  return schema instanceof z.ZodPipe && schema.in instanceof z.ZodString
}

/** The schema of one item, if `schema` is that of a list. */
export function itemOf(schema: z.ZodType | undefined): z.ZodType | undefined {
  if (schema instanceof z.ZodOptional) return itemOf(schema.unwrap() as z.ZodType)
  return schema instanceof z.ZodArray ? (schema.element as z.ZodType) : undefined
}

/** The value one step further in, or undefined. Own properties only. */
export function childOf(value: unknown, step: Step): unknown {
  if (typeof value !== 'object' || value === null || !Object.hasOwn(value, step)) return undefined
  return (value as Record<Step, unknown>)[step]
}

export function valueAt(value: unknown, path: readonly Step[]): unknown {
  return path.reduce<unknown>(childOf, value)
}

function stepInto(schema: z.ZodType, step: Step): z.ZodType | undefined {
  if (schema instanceof z.ZodObject) {
    return Object.hasOwn(schema.shape, step) ? (schema.shape[String(step)] as z.ZodType) : undefined
  }
  if (schema instanceof z.ZodArray) return schema.element as z.ZodType
  if (schema instanceof z.ZodRecord) return schema.valueType as z.ZodType
  return undefined
}

function choose(schema: z.ZodType, value: unknown): z.ZodType | undefined {
  if (schema instanceof z.ZodOptional || schema instanceof z.ZodNullable)
    return choose(schema.unwrap() as z.ZodType, value)
  if (!(schema instanceof z.ZodDiscriminatedUnion)) return schema
  const by = schema.def.discriminator
  const options = schema.options as readonly z.ZodType[]
  const chosen = options.find((option) => hasWord(option, by, childOf(value, by)))
  // Alternatives may be told apart further by another key: a judge by what it computes.
  return chosen instanceof z.ZodDiscriminatedUnion ? choose(chosen, value) : chosen
}

function hasWord(option: z.ZodType, by: string, word: unknown): boolean {
  if (option instanceof z.ZodDiscriminatedUnion)
    return (option.options as readonly z.ZodType[]).some((inner) => hasWord(inner, by, word))
  const literal = option instanceof z.ZodObject ? option.shape[by] : undefined
  return literal instanceof z.ZodType && literal.safeParse(word).success
}
