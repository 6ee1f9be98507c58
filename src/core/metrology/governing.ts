// Which of several judged characteristics governs: the one that uses the largest share of its limit.
import type { Judgement } from './conformity.ts'

export interface Governs<C extends string> {
  /** More than one when they tie. */
  readonly characteristics: readonly C[]
  readonly used: number
}

/** Among those that were in fact compared with a limit; null when none was. */
export function governing<C extends string>(
  judged: readonly { readonly characteristic: C; readonly judgement: Judgement }[],
): Governs<C> | null {
  const shares = judged.flatMap(({ characteristic, judgement: { compared, used } }) =>
    compared && used !== null ? [{ characteristic, used }] : [],
  )
  if (shares.length === 0) return null
  const used = Math.max(...shares.map((share) => share.used))
  const tied = shares.filter((share) => share.used >= used - 1e-9)
  return { characteristics: tied.map(({ characteristic }) => characteristic), used }
}
