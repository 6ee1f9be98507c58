// The head of a log as it is written down by hand: in groups, so that no figure is lost. At the bench it is called its check
// number, as a head is that of the cylinder there.

/** Lines that say the head, 64 hex digits; none where there is none. */
export function headLines(head: string | undefined): string[] {
  if (head === undefined) return []
  return [
    'Check number of the log up to here, for the paper that stays (verify --head takes it):',
    ...headGroups(head),
  ]
}

const GROUP = 8
const SET_IN = 2
const MOST_GROUPS = 4

/** The 64 digits in two lines; in more where `room` columns would part a group. */
export function headGroups(head: string, room: number = Number.POSITIVE_INFINITY): string[] {
  const groups = head.match(new RegExp(`.{1,${GROUP}}`, 'g')) ?? []
  const fitting = Math.floor((room - SET_IN + 1) / (GROUP + 1))
  const most = Math.max(1, Math.min(MOST_GROUPS, fitting))
  const lines: string[] = []
  for (let at = 0; at < groups.length; at += most)
    lines.push(`${' '.repeat(SET_IN)}${groups.slice(at, at + most).join(' ')}`)
  return lines
}

/** The same at the end of a job, for whoever notes it. */
export function checkNumberLines(head: string, room?: number): string[] {
  return ['check number of the log:', ...headGroups(head, room)]
}

export const KEEP_ELSEWHERE =
  'Write that check number down elsewhere: it proves later that nothing was changed or cut off.'
