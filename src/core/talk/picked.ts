// Which of several numbered things was keyed.

/** By its line, or by the number on its tag. Where a tag is itself one of the line numbers, only lines count. */
export function pickedFrom<T extends { readonly id: string }>(
  options: readonly T[],
  text: string,
): T | undefined {
  const line = /^\d{1,2}$/.test(text) ? options[Number(text) - 1] : undefined
  if (line !== undefined) return line
  const named = options.filter((one) => one.id.toLowerCase() === text.toLowerCase())
  return named.length === 1 ? named[0] : undefined
}

interface Listed {
  readonly id: string
  readonly note?: boolean | undefined
}

/** `2`, or `2 4` for several of a list, each once; `note`: words are asked for one of them. Null: no number of the list. */
export function pickedOf(
  conditions: readonly Listed[],
  line: string,
): {
  readonly found: { readonly condition: string; readonly also?: readonly string[] }
  readonly note: boolean
} | null {
  const text = line.trim()
  if (!/^\d{1,2}(?:(?: +| *, *| +and +)\d{1,2})*$/i.test(text)) return null
  const picked = [...new Set(text.match(/\d+/g))].map((number) => conditions[Number(number) - 1])
  const known = picked.filter((one) => one !== undefined)
  const [first, ...others] = known
  if (first === undefined || known.length < picked.length) return null
  const also = others.length === 0 ? {} : { also: others.map(({ id }) => id) }
  return { found: { condition: first.id, ...also }, note: known.some(({ note }) => note === true) }
}
