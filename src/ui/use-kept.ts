// A line keyed while sides were still to be turned over: it waits, is told, and stands on the line being keyed once the question is up,
// where Enter sends it or it is changed. Where something else is asked by then, that it was not taken is told.
import { useEffect, useRef, useState } from 'react'

/** Common practice, no source: an Enter nearer than that to the one that turned over came with it. */
const BOUNCE_MS = 600

export interface Kept {
  readonly text: string | null
  /** False where a line waits already. */
  readonly keep: (line: string) => boolean
  /** Somebody told of danger since: what was read before it is measured again, if at all. */
  readonly drop: () => void
  /** This Enter is the one that turned over, hit twice: what was put on the line has not been looked at. */
  readonly isTooSoon: (line: string) => boolean
}

export function useKept(
  asked: string,
  hasMore: boolean,
  put: { readonly current: (text: string) => boolean },
  tell: (notice: string) => void,
): Kept {
  const [kept, setKept] = useState<{ readonly text: string; readonly asked: string } | null>(null)
  const last = useRef({ text: '', at: Number.NEGATIVE_INFINITY })
  useEffect(() => {
    if (kept === null) return
    if (kept.asked !== asked) {
      setKept(null)
      tell(`Not taken: ${kept.text}. Something else is asked now.`)
    } else if (!hasMore) {
      setKept(null)
      if (!put.current(kept.text)) return tell(`Not taken: ${kept.text}.`)
      last.current = { text: kept.text, at: performance.now() }
    }
  }, [kept, asked, hasMore, put, tell])
  return {
    text: kept?.text ?? null,
    keep: (line) => {
      if (kept !== null) return false
      setKept({ text: line.trim(), asked })
      return true
    },
    drop: () => {
      if (kept !== null) tell(`Not taken: ${kept.text}.`)
      setKept(null)
    },
    isTooSoon: (line) => {
      const { text, at } = last.current
      return text !== '' && line === text && performance.now() - at < BOUNCE_MS
    },
  }
}
