import type { Entered } from '../form/entries.ts';

/** A form as it was when one opened it, as one left it, and as somebody else has saved it since. */
export interface MergeOf {
  readonly was: Entered;
  readonly mine: Entered;
  readonly theirs: Entered;
}

export interface MergedEntries {
  readonly fields: Entered;
  /** What both changed, and not to the same. */
  readonly conflicts: readonly { readonly field: string; readonly mine: string; readonly theirs: string }[];
}

export function plainText(text: string | undefined): string {
  return (text ?? '').replace(/\r\n?/g, '\n').trim();
}

export function isSameText(a: string | undefined, b: string | undefined): boolean {
  return plainText(a) === plainText(b);
}
