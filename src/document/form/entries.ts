import type { LengthRange } from '../../domain/units/parse-length.ts';

/** How the text of one entry is read. */
export type Reading =
  | { readonly kind: 'text' }
  | { readonly kind: 'number' }
  | { readonly kind: 'length'; readonly range: LengthRange }
  /** Several lengths, separated by `;`. */
  | { readonly kind: 'lengths'; readonly range: LengthRange }
  /** One text a line. */
  | { readonly kind: 'lines' }
  | { readonly kind: 'weight' }
  | { readonly kind: 'weight-per-length' }
  | { readonly kind: 'torque' }
  | { readonly kind: 'money' }
  | { readonly kind: 'tick' };

/** One entry of a form. */
export interface EntryOf {
  /** Path in the document's fragment, which is also the name of the field. */
  readonly path: string;
  readonly reading: Reading;
}

/** The texts of a form by the name of their field. */
export type Entered = Readonly<Record<string, string>>;

/** What is wrong with one entry, or what is asked about it; beside the field of this name. */
export interface EntryFault {
  readonly field: string;
  readonly said: string;
}

export const text = (path: string): EntryOf => ({ path, reading: { kind: 'text' } });
export const number = (path: string): EntryOf => ({ path, reading: { kind: 'number' } });
export const tick = (path: string): EntryOf => ({ path, reading: { kind: 'tick' } });
export const weight = (path: string): EntryOf => ({ path, reading: { kind: 'weight' } });
export const money = (path: string): EntryOf => ({ path, reading: { kind: 'money' } });
export const length = (path: string, range: LengthRange): EntryOf => ({ path, reading: { kind: 'length', range } });
