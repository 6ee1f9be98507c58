// Words that no step and no value can be called, because they mean something else in a rule.

/** Words the expression language keeps for itself (CEL language definition, "Reserved words"; listed from memory). */
const KEYWORDS =
  'true false null in as break const continue else for function if import let loop package namespace return ' +
  'var void while'

/** Names the language or its library gives a meaning of their own: types, and what every object has. */
const TAKEN =
  'bool int uint double string bytes list map type null_type dyn cel optional constructor prototype'

/** `machine.` stands before the facts of the machine record. */
export const RESERVED_NAMES: ReadonlySet<string> = new Set(`${KEYWORDS} ${TAKEN} machine`.split(' '))
