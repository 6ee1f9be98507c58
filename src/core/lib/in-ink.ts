// The words of a procedure as a sheet of paper says them: nobody keys or types there, a pen writes. Only the verb changes; what is to be
// written, the limits and the trade's own terms (a key in its keyway) stand as they are in the file.

/** In this order. Each is a verb of the keyboard in the form that procedures use it, and what a pen does in its place. */
const VERBS: readonly (readonly [RegExp, string])[] = [
  [/\b(T|t)ype(?= (?:the|it|them|these|those)\b)/g, 'write'],
  [/\b(T|t)hen type\b/g, 'then write'],
  [/\bKey leave\./g, 'This sheet ends here.'],
  [/\bKey changes: /g, 'Set side by side: '],
  [/\bis at the keyboard\b/g, 'has the sheet'],
  [/\b(k|K)eys? (it|them)\b(?! in\b)/g, ''],
  [/\b(K|k)ey(?= (?:the|its|their|one|both|each|every|all|what|that|this)\b)/g, 'write down'],
  [/\bkeys(?= (?:the|its|their|one|both|each|every|all|what|that|this)\b)/g, 'writes'],
  [/\b(who|and|or) keys\b/g, '$1 writes'],
  [/\band the program counts them\b/g, 'counted by the clock'],
]

export function inInk(text: string): string {
  return VERBS.reduce(
    (told, [verb, pen]) => told.replace(verb, (found, ...more) => penned(found, pen, more)),
    text,
  )
}

function penned(found: string, pen: string, more: readonly unknown[]): string {
  const [first, what] = more
  const isGreat = /^[A-Z]/.test(found)
  if (pen === '') return cased(`${/^keys/i.test(found) ? 'writes' : 'write'} ${String(what)} down`, isGreat)
  return cased(pen.replace('$1', String(first)), isGreat)
}

const cased = (text: string, isGreat: boolean) =>
  isGreat ? text.replace(/^./, (one) => one.toUpperCase()) : text
