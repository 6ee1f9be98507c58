// Waits of a gate that are longer than what was proved before them lives: it lapses while the wait runs, the wait begins anew
// with it, and so on for good. The gate fails closed, and nobody ever gets past it.
import { quote } from '../lib/wording.ts'
import type { Evidence, EvidenceOf } from './evidence.ts'
import { type Finding, finding, type Path } from './lint-common.ts'
import type { StepOf } from './procedure.ts'

interface Life {
  readonly text: string
  readonly si: number
}

/** `lifeOf` gives what is looked at here: the file's own lives, or the one that the machine record has for gas. */
export function lintWaits(
  gate: StepOf<'gate'>,
  base: Path,
  lifeOf: (evidence: Evidence) => Life | undefined,
): Finding[] {
  return gate.evidence.flatMap((wait, n) => {
    if (wait.kind !== 'wait') return []
    return gate.evidence
      .slice(0, n)
      .flatMap((before) => lintPair(wait, before, lifeOf(before), [...base, 'evidence', n, 'lasts']))
      .slice(0, 1)
  })
}

function lintPair(wait: EvidenceOf<'wait'>, before: Evidence, life: Life | undefined, path: Path): Finding[] {
  if (life === undefined || life.si <= 0 || wait.lasts.si < life.si) return []
  const message = `${quote(wait.id)} lasts ${wait.lasts.text}, and ${quote(before.id)} before it is good for ${life.text} only: it would lapse in every wait, and this gate never open.`
  return [finding(path, 'never-over', message, `put the wait before ${before.id}, or make it shorter`)]
}
