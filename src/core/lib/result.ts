// An expected outcome that may be a refusal. Refusals are values with a code and one sentence; bugs throw.

export interface Refusal {
  readonly code: string
  /** One sentence: what was wrong, about the person's own word, and what would be right. */
  readonly say: string
}

export type Result<T, E = Refusal> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly error: E }

export function ok<T>(value: T): { readonly ok: true; readonly value: T } {
  return { ok: true, value }
}

export function refuse(code: string, say: string): { readonly ok: false; readonly error: Refusal } {
  return { ok: false, error: { code, say } }
}

/** Ends a switch over a union: a new member that nobody handled is a type error, and at run time a bug. */
export function assertNever(value: never): never {
  throw new Error(`unhandled case: ${JSON.stringify(value)}`)
}
