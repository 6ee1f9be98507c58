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

/** The 64 digits in two lines. */
export function headGroups(head: string): string[] {
  const groups = head.match(/.{1,8}/g) ?? []
  return [`  ${groups.slice(0, 4).join(' ')}`, `  ${groups.slice(4).join(' ')}`]
}

/** The same at the end of a job, for whoever notes it. */
export function checkNumberLines(head: string): string[] {
  return ['check number of the log:', ...headGroups(head)]
}

export const KEEP_ELSEWHERE =
  'Write that check number down elsewhere: it proves later that nothing was changed or cut off.'
