// The head of a log as it is written down by hand: in groups, so that no figure is lost.

/** Lines that say the head, 64 hex digits; none where there is none. */
export function headLines(head: string | undefined): string[] {
  if (head === undefined) return []
  const groups = head.match(/.{1,8}/g) ?? []
  return [
    'Head of the log up to here, to be written on the paper that stays (barover verify --head):',
    `  ${groups.slice(0, 4).join(' ')}`,
    `  ${groups.slice(4).join(' ')}`,
  ]
}
