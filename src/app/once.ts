// What was said of a step, so that it is said once: shared by the voice and by plain lines.

export interface Once {
  /** Goes on at this step; true where all of it is to be said: it is another one, or it is asked for anew. */
  readonly at: (step: string, anew: boolean) => boolean
  readonly has: (text: string) => boolean
  readonly add: (text: string) => void
}

export function createOnce(): Once {
  let step = ''
  let said = new Set<string>()
  return {
    at: (next, anew) => {
      if (next === step && !anew) return false
      step = next
      said = new Set()
      return true
    },
    has: (text) => said.has(text),
    add: (text) => void said.add(text),
  }
}
