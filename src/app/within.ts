// Patience with work that may never end, as with a disk that does not answer.

/** Waits for the work, but no longer than that. */
export async function within(work: Promise<void>, ms?: number): Promise<void> {
  if (ms === undefined) return work
  let timer: ReturnType<typeof setTimeout> | undefined
  const late = new Promise<void>((resolve) => {
    timer = setTimeout(resolve, ms)
  })
  await Promise.race([work, late]).finally(() => clearTimeout(timer))
}
