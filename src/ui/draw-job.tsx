// Puts the conversation on the terminal and takes it off again, leaving the terminal as it was.
import { render } from 'ink'
import type { Session } from '../app/session.ts'
import type { SheetStyle } from '../core/sheet/block.ts'
import { JobScreen } from './job-screen.tsx'
import { markPastes } from './paste-mode.ts'

/** True when it was interrupted. @throws what kept the journal from being written. */
export async function drawJob(session: Session, style: SheetStyle): Promise<boolean> {
  let how: 'over' | 'interrupted' | Error = 'interrupted'
  const unmark = markPastes()
  try {
    const app = render(
      <JobScreen
        session={session}
        style={style}
        onEnd={(ended) => {
          how = ended
        }}
      />,
      { exitOnCtrlC: false },
    )
    await app.waitUntilExit()
  } finally {
    unmark()
  }
  const ended = how as 'over' | 'interrupted' | Error
  if (ended instanceof Error) throw ended
  return ended === 'interrupted'
}
