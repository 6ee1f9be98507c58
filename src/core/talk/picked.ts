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
