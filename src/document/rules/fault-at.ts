import { type Fault, formatPath, type PathPart } from '../fault.ts';

/** A fault at a place, with what is wrong and what to do. */
export function faultAt(path: readonly PathPart[], message: string, remedy: string): Fault {
  return { path: formatPath(path), message, remedy };
}
