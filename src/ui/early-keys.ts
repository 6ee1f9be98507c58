// What was keyed before there was a screen: nobody knows what it answers, and it may be a PIN, so none of it is drawn, heard or
// kept. A STOP is a STOP all the same, and Control-C ends the program.
import process from 'node:process'
import { isStop } from '../core/talk/words.ts'

export interface Early {
  /** Something was keyed and is dropped. */
  readonly dropped: boolean
  readonly stop: boolean
}

/** It stands until something is keyed: whoever looks at the keys has not seen it yet. */
export const DROPPED = 'Not taken: keyed before this line stood. Key it again.'

const NONE: Early = { dropped: false, stop: false }

/** What waits on the terminal is there at the first look for it; one more turn, as a read may end in the next one. */
const TURNS = 3

/** Takes away what waits to be read on the terminal of the program, before the first frame is drawn. */
export async function dropEarly(stdin: NodeJS.ReadStream = process.stdin): Promise<Early> {
  if (stdin !== process.stdin || stdin.isTTY !== true) return NONE
  stdin.setRawMode(true)
  let keys = ''
  const take = () => {
    for (let chunk = stdin.read(); chunk !== null; chunk = stdin.read()) keys += String(chunk)
  }
  // As the renderer reads it: a stream that once was paused would wait for a resume that never comes.
  stdin.on('readable', take)
  for (let n = 0; n < TURNS; n++) await new Promise((resolve) => setImmediate(resolve))
  stdin.off('readable', take)
  return earlyOf(keys, () => {
    stdin.setRawMode(false)
    process.kill(process.pid, 'SIGINT')
  })
}

/** `interrupt` is called where Control-C is among the keys. */
export function earlyOf(keys: string, interrupt: () => void): Early {
  if (keys.includes('\u0003')) interrupt()
  // Also without its Enter: whoever keyed it will see that it was heard.
  return { dropped: keys !== '', stop: keys.split(/[\r\n]+/).some((line) => isStop(line)) }
}
