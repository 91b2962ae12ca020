import type { UnitSystem } from '../../../src/domain/model.ts';

/** What a person is told: what is wrong, the number, and what to do. */
export interface Told {
  readonly what: string;
  readonly number: string | null;
  readonly remedy: string;
}

/** How the job writes its figures. */
export interface Speech {
  readonly units: UnitSystem;
  readonly zone: string | null;
}

interface Coded {
  readonly code: string;
  readonly args: unknown;
}

/** The arguments of each code of a union of coded values. */
export type ArgsOf<Union extends Coded> = { readonly [One in Union as One['code']]: One['args'] };

/** One text for every code, checked for completeness by the compiler. */
export type Words<Args> = { readonly [Code in keyof Args]: (args: Args[Code], say: Speech) => Told };
export type WordsFor<Union extends Coded> = Words<ArgsOf<Union>>;

/** One of the coded values, its code tied to its own arguments. */
export type OneOf<Args, Code extends keyof Args = keyof Args> = {
  readonly [Each in Code]: { readonly code: Each; readonly args: Args[Each] };
}[Code];
