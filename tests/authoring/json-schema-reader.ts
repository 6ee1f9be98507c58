// As much of JSON Schema draft 7 as the generated schemas use, written apart from the library that made them, so that
// they are read by something else than what wrote them. A keyword not known here is a failure of the test.
// Source: JSON Schema draft-07 validation, json-schema.org (2018), sections 6.1 to 6.7; keywords from memory.

export type JsonSchema = Readonly<Record<string, unknown>>

const REMARKS = new Set(['$schema', 'title', 'description', 'examples', 'patternErrorMessage'])

/** Places in `value` that do not fit the schema, as `path: keyword`. Empty when it fits. */
export function misfitsOf(schema: JsonSchema, value: unknown, path = ''): string[] {
  return Object.entries(schema).flatMap(([keyword, rule]) => {
    if (REMARKS.has(keyword)) return []
    const check = KEYWORDS[keyword]
    if (check === undefined) throw new Error(`the schema uses ${keyword}, which is not read here`)
    return check({ rule, value, path, schema })
  })
}

interface Case {
  readonly rule: unknown
  readonly value: unknown
  readonly path: string
  readonly schema: JsonSchema
}

type Check = (one: Case) => string[]

const KEYWORDS: Readonly<Record<string, Check>> = {
  type: (one) => unless(one, 'type', hasType(one.value, String(one.rule))),
  const: (one) => unless(one, 'const', one.value === one.rule),
  enum: (one) => unless(one, 'enum', (one.rule as unknown[]).includes(one.value)),
  minLength: ifText('minLength', (text, rule) => [...text].length >= rule),
  maxLength: ifText('maxLength', (text, rule) => [...text].length <= rule),
  pattern: (one) =>
    unless(
      one,
      'pattern',
      typeof one.value !== 'string' || new RegExp(String(one.rule), 'u').test(one.value),
    ),
  minimum: ifNumber('minimum', (number, rule) => number >= rule),
  maximum: ifNumber('maximum', (number, rule) => number <= rule),
  exclusiveMinimum: ifNumber('exclusiveMinimum', (number, rule) => number > rule),
  maxItems: (one) =>
    unless(one, 'maxItems', !Array.isArray(one.value) || one.value.length <= Number(one.rule)),
  minItems: (one) =>
    unless(one, 'minItems', !Array.isArray(one.value) || one.value.length >= Number(one.rule)),
  items: ({ rule, value, path }) =>
    Array.isArray(value)
      ? value.flatMap((item, n) => misfitsOf(rule as JsonSchema, item, `${path}/${n}`))
      : [],
  required: ({ rule, value, path }) =>
    isKeyed(value)
      ? (rule as string[])
          .filter((key) => !Object.hasOwn(value, key))
          .map((key) => `${path}/${key}: required`)
      : [],
  properties: ({ rule, value, path }) =>
    isKeyed(value)
      ? Object.entries(rule as Record<string, JsonSchema>).flatMap(([key, inner]) =>
          Object.hasOwn(value, key) ? misfitsOf(inner, value[key], `${path}/${key}`) : [],
        )
      : [],
  additionalProperties: ({ rule, value, path, schema }) => {
    const known = Object.keys((schema.properties ?? {}) as object)
    const others = isKeyed(value) ? Object.entries(value).filter(([key]) => !known.includes(key)) : []
    return others.flatMap(([key, inner]) =>
      rule === false ? [`${path}/${key}: unknown`] : misfitsOf(rule as JsonSchema, inner, `${path}/${key}`),
    )
  },
  propertyNames: ({ rule, value, path }) =>
    isKeyed(value)
      ? Object.keys(value).flatMap((key) => misfitsOf(rule as JsonSchema, key, `${path}/${key}`))
      : [],
  anyOf: (one) => unless(one, 'anyOf', fitting(one) > 0),
  oneOf: (one) => {
    if (fitting(one) === 1) return []
    // Told apart by `kind` or `from`: what the alternative meant by the author complains of says more.
    const meant = (one.rule as JsonSchema[])
      .map((inner) => misfitsOf(inner, one.value, one.path))
      .filter((found) => !found.some((misfit) => misfit.endsWith(': const')))
    return meant.length === 1 ? (meant[0] ?? []) : [`${one.path}: oneOf`]
  },
}

function fitting({ rule, value, path }: Case): number {
  return (rule as JsonSchema[]).filter((inner) => misfitsOf(inner, value, path).length === 0).length
}

function unless({ path }: Case, keyword: string, fits: boolean): string[] {
  return fits ? [] : [`${path}: ${keyword}`]
}

function ifText(keyword: string, fits: (text: string, rule: number) => boolean): Check {
  return (one) => unless(one, keyword, typeof one.value !== 'string' || fits(one.value, Number(one.rule)))
}

function ifNumber(keyword: string, fits: (number: number, rule: number) => boolean): Check {
  return (one) => unless(one, keyword, typeof one.value !== 'number' || fits(one.value, Number(one.rule)))
}

function isKeyed(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

function hasType(value: unknown, type: string): boolean {
  if (type === 'object') return isKeyed(value)
  if (type === 'array') return Array.isArray(value)
  if (type === 'null') return value === null
  if (type === 'integer') return Number.isInteger(value)
  if (type === 'string' || type === 'number' || type === 'boolean') return typeof value === type
  throw new Error(`the schema uses the type ${type}, which is not read here`)
}
