// Judges figures that a procedure worked out from its readings, each against its own limit. Pure; SI throughout.
import { holdJudgement, type Judgement, judgeAgainst } from './conformity.ts'
import { type Governs, governing } from './governing.ts'
import type { Limit } from './limit.ts'
import { type VerdictWord, worst } from './verdict.ts'

/** One figure as the job has it. */
export interface Figure {
  readonly characteristic: string
  /** The expression as the procedure writes it. */
  readonly is: string
  /** SI; null when it could not be worked out, and then `unknown` says why. */
  readonly value: number | null
  readonly unknown: readonly string[]
  /** Expanded uncertainty at k = 2, SI; null when an instrument states none. */
  readonly expandedU: number | null
  /** Change of the figure for one step of the coarsest instrument behind it, SI. */
  readonly resolution: number | null
  readonly limit: Limit | null
  readonly parts: readonly FigurePart[]
}

/** One reading that the figure rests on. */
export interface FigurePart {
  readonly place: string
  /** As it went in, SI: combined repeats, at 20 degC where the procedure asks for it. */
  readonly si: number
  readonly expandedU: number | null
  readonly instruments: readonly string[]
  /** How far the figure moves when the reading moves by its U, SI. */
  readonly moves: number | null
}

export interface FigureJudgeInput {
  readonly figures: readonly Figure[]
  /** Reasons that nothing measured here can be trusted, each in one sentence. */
  readonly holds: readonly string[]
  readonly k: 2
  readonly simpleAcceptance: { readonly by: string } | null
}

export interface FigureJudgement {
  readonly characteristic: string
  readonly judgement: Judgement
}

export interface FigureVerdict {
  readonly verdict: VerdictWord
  readonly judged: readonly FigureJudgement[]
  /** Those that use the largest share of their limit; more than one when they tie. */
  readonly governs: Governs<string> | null
  readonly holds: readonly string[]
}

/**
 * The most severe word of all figures stands for the whole (a figure that cannot be judged is HOLD, and with it the whole).
 * A hold on the measuring turns every word to HOLD. Decision rule: see judgeAgainst. No figures at all: HOLD.
 */
export function judgeFigures(input: FigureJudgeInput): FigureVerdict {
  const judged = input.figures.map((figure) => ({
    characteristic: figure.characteristic,
    judgement: input.holds.length > 0 ? holdJudgement(input.holds) : judgeOne(input, figure),
  }))
  const holds = [
    ...input.holds,
    ...judged.flatMap(({ characteristic, judgement }) =>
      judgement.verdict === 'HOLD' && input.holds.length === 0
        ? [`${characteristic}: ${judgement.reasons.join('; ')}`]
        : [],
    ),
  ]
  const words: VerdictWord[] = judged.map(({ judgement }) => judgement.verdict)
  return {
    verdict: worst([...words, ...input.holds.map((): VerdictWord => 'HOLD')]),
    judged,
    governs: governing(judged),
    holds,
  }
}

function judgeOne({ k, simpleAcceptance }: FigureJudgeInput, figure: Figure): Judgement {
  const { value, unknown, expandedU, resolution, limit, characteristic } = figure
  if (limit !== null && limit.characteristic !== characteristic)
    return holdJudgement([`the limit on record is for ${limit.characteristic}, not for this`])
  if (value === null) return holdJudgement(unknown.length > 0 ? unknown : ['it could not be worked out'])
  return judgeAgainst({ value, expandedU, k, resolution, limit, simpleAcceptance })
}
