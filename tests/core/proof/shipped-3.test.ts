// A quarter of the shipped procedures, each searched to the end.
import { proveShipped } from '../../helpers/prove-shipped.ts'

proveShipped(3, 4)
