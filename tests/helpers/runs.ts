/**
 * How many cases a random search tries: `few`, as the suite has time for, or WIDE times as many where that is set, so
 * WIDE=10 npx vitest run tests/core/job/safety.test.ts looks ten times as far.
 */
export const runs = (few: number): number => few * Number(process.env.WIDE ?? 1)
