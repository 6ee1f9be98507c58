// The computations that procedures can call by name: those of the registry, the same as on the command line.
export { COMPUTATIONS } from '../compute/registry.ts'
