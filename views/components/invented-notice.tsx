import type { JSX } from 'preact';
import { inventedWords } from '../words/invented.ts';
import { Notice } from './notice.tsx';

/** Above hours that come from an invented labour book, on the screen and on paper. */
export function InventedNotice({ version }: { readonly version: string | null | undefined }): JSX.Element | null {
  const said = inventedWords(version ?? '');
  return said === '' ? null : <Notice kind="note" text={said} />;
}
