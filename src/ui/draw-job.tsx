// Puts the conversation of a job on the terminal.
import type { Session } from '../app/session.ts'
import type { SheetStyle } from '../core/sheet/block.ts'
import { DROPPED, dropEarly } from './early-keys.ts'
import { JobScreen } from './job-screen.tsx'
import { show, type Terminal } from './show.tsx'

/** True when it was interrupted. @throws what kept the journal from being written. */
export async function drawJob(session: Session, style: SheetStyle, terminal?: Terminal): Promise<boolean> {
  const early = await dropEarly(terminal?.stdin)
  if (early.stop) await session.hear('stop')
  let how = 'interrupted' as 'over' | 'interrupted' | Error
  const screen = (
    <JobScreen
      session={session}
      style={style}
      notice={early.dropped && !early.stop ? DROPPED : null}
      onEnd={(ended) => {
        how = ended
      }}
    />
  )
  await show(screen, terminal)
  if (how instanceof Error) throw how
  return how === 'interrupted'
}
