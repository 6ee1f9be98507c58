// Which side of what is asked is up, where a low terminal has it folded. Sides that were turned over are not shown first again until
// the job comes to another step, and the key Up goes back to them.
import { useCallback, useReducer, useRef } from 'react'
import type { SideUp, Turn } from '../core/sheet/live.ts'
import type { PromptView } from '../core/sheet/prompt-view.ts'
import { isMakeSafe, isStop, wordIn } from '../core/talk/words.ts'

/** The same as long as the same is asked. */
export function askedName({ margin, title, must, ask }: PromptView): string {
  return [margin, title, ...[...must, ...ask].map((r) => r.text)].join('\n')
}

/**
 * Why a line is not heard: it turns over, or it answers what was not read to its end. STOP, the make-safe sheet and leaving are always
 * heard; where there is more to read so are the other words and questions, which answer nothing.
 */
export function heldBack(
  line: string,
  tooSmall: boolean,
  hasMore: boolean,
  isAsked: boolean,
): 'unseen' | 'turn' | 'unread' | null {
  if (isStop(line) || isMakeSafe(line)) return null
  const word = wordIn(line)
  // What cannot be seen cannot be answered.
  if (tooSmall) return word === 'leave' ? null : 'unseen'
  if (!hasMore || word !== null || isAsked) return null
  return line.trim() === '' ? 'turn' : 'unread'
}

export interface Side {
  readonly up: SideUp
  /** Turns over; false where there is nothing to turn to. */
  readonly turn: (by: 1 | -1) => boolean
  /** What stands before the question was turned over at an earlier one, and is not shown again of itself. */
  readonly frontRead: boolean
}

/** What came with the last line is always read; what stands before the question only once, and never before what is urgent. */
function isFirstNext({ toRead = 0, isUrgent, key }: Turn, read: ReadonlySet<string>): boolean {
  return toRead > 0 || !(isUrgent || read.has(key))
}

const FIRST: SideUp = { of: 'front', n: 0 }
const QUESTION: SideUp = { of: 'question', n: 0 }

/**
 * The side that is up of what is asked. `toRead` names what came before it and has to be read first, if anything; `fold` tells how it
 * is folded with a side up.
 */
export function useSide(view: PromptView, toRead: string, fold: (side: SideUp) => Turn | null): Side {
  const asked = `${toRead}\n${askedName(view)}`
  const [step = ''] = view.margin.split('.')
  /** Of this step: what stood on the sides before its question when they were turned over. */
  const read = useRef({ step: '', keys: new Set<string>() })
  if (read.current.step !== step) read.current = { step, keys: new Set() }
  const at = useRef({ asked: '', up: FIRST, frontRead: false })
  const [, redraw] = useReducer((n: number) => n + 1, 0)
  const first = fold(at.current.up)
  if (first !== null && at.current.asked !== asked)
    at.current = {
      asked,
      up: isFirstNext(first, read.current.keys) ? FIRST : QUESTION,
      frontRead: read.current.keys.has(first.key),
    }
  const { up, frontRead } = at.current
  const turn = useCallback(
    (by: 1 | -1) => {
      const now = fold(up)
      const to = now === null ? -1 : now.at + by
      if (now === null || to < 0 || to >= now.of) return false
      const toRead = now.toRead ?? 0
      const isRead = now.at < toRead && read.current.keys.has(now.key)
      const isQuestion = to >= now.front || (isRead && to >= toRead)
      at.current = {
        ...at.current,
        up: isQuestion ? { of: 'question', n: Math.max(0, to - now.front) } : { of: 'front', n: to },
      }
      if (isQuestion) read.current.keys.add(now.key)
      redraw()
      return true
    },
    [fold, up],
  )
  return { up, turn, frontRead }
}
