import { hangers } from './hangers-register.ts';
import { joints } from './joints-register.ts';
import type { Register } from './register.ts';
import { runs } from './runs-register.ts';
import { sections } from './sections-register.ts';
import { tapDirectory } from './tap-directory.ts';
import { tests } from './tests-register.ts';

/** The lists of the package, in its order. */
export const REGISTERS: readonly Register[] = [runs, sections, joints, hangers, tapDirectory, tests];
