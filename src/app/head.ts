// The head of a log as it is written down by hand: in groups, so that no figure is lost.

/** Lines that say the head, 64 hex digits; none where there is none. */
export function headLines(head: string | undefined): string[] {
  if (head === undefined) return []
  return [
    'Head of the log up to here, to be written on the paper that stays (barover verify --head):',
    ...headGroups(head),
  ]
}

/** The 64 digits in two lines. */
export function headGroups(head: string): string[] {
  const groups = head.match(/.{1,8}/g) ?? []
  return [`  ${groups.slice(0, 4).join(' ')}`, `  ${groups.slice(4).join(' ')}`]
}
