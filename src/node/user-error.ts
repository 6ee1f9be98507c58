// Something a person can put right: one sentence, perhaps a hint, and the exit code it ends in.

export class UserError extends Error {
  readonly exitCode: number
  readonly hint: string | undefined

  constructor(message: string, exitCode: number, hint?: string) {
    super(message)
    this.name = 'UserError'
    this.exitCode = exitCode
    this.hint = hint
  }
}
