// An answers file: one answer a line, in the order they are asked for. `#` begins a comment; blank lines are passed over
// (the answer to "Enter when done" is written `done`). Three lines are not answers and set the clock of the run:
//   clock 2026-03-14 06:20+01:00    step 40 s    wait 12 min
import { durationMs } from '../core/lib/duration.ts'
import { type Instant, readStamp } from '../core/lib/instant.ts'
import { ok, type Result, refuse } from '../core/lib/result.ts'

export type AnswerLine =
  | { readonly kind: 'answer'; readonly text: string; readonly line: number }
  | { readonly kind: 'clock'; readonly at: Instant }
  | { readonly kind: 'step'; readonly ms: number }
  | { readonly kind: 'wait'; readonly ms: number }

export function readAnswers(text: string, file: string): Result<readonly AnswerLine[]> {
  const lines: AnswerLine[] = []
  for (const [i, raw] of text.split(/\r?\n/).entries()) {
    const line = raw.trim()
    if (line === '' || line.startsWith('#')) continue
    const directive = /^(clock|step|wait)\s+(.*)$/.exec(line)
    if (directive === null) {
      lines.push({ kind: 'answer', text: line, line: i + 1 })
      continue
    }
    const read = readDirective(directive[1] ?? '', directive[2] ?? '')
    if (read === null) {
      return refuse(
        'answers',
        `${file}:${i + 1}: "${line.slice(0, 40)}" is not understood: write clock 2026-03-14 06:20, step 40 s or wait 12 min.`,
      )
    }
    lines.push(read)
  }
  return ok(lines)
}

function readDirective(word: string, rest: string): AnswerLine | null {
  if (word === 'clock') {
    const at = readStamp(rest.trim())
    return at === null ? null : { kind: 'clock', at }
  }
  const ms = durationMs(rest)
  if (ms === null) return null
  return word === 'step' ? { kind: 'step', ms } : { kind: 'wait', ms }
}

/** The moment a run of these answers starts at, when they set one before the first answer. */
export function startOf(lines: readonly AnswerLine[]): Instant | null {
  for (const line of lines) {
    if (line.kind === 'clock') return line.at
    if (line.kind === 'answer') return null
  }
  return null
}
