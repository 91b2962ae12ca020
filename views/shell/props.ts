import type { ComponentChildren } from 'preact';
import type { JobPart } from './job-parts.ts';

/** `office`: dense sheets, light or dark as the reader's device asks. `field`: large targets and the greatest contrast. */
export type Theme = 'office' | 'field';

export interface Crumb {
  readonly word: string;
  readonly href: string;
}

/** What was just done, or could not be; `undo` is a ready form. */
export interface Flash {
  readonly kind: 'done' | 'stop' | 'note';
  readonly text: string;
  readonly undo?: ComponentChildren;
}

export interface PageProps {
  /** Names the sheet: in the window's title, the heading of the page and the title block. */
  readonly title: string;
  readonly viewer: { readonly name: string; readonly roleWord: string } | null;
  readonly job?: { readonly id: string; readonly number: string; readonly name: string };
  /** Which part of the job this page belongs to. */
  readonly part?: JobPart;
  /** Where the page stands, from the outside in, without the page itself. */
  readonly trail: readonly Crumb[];
  readonly theme: Theme;
  /** Server-sent events of the job; parts wrapped in `Live` fetch themselves again on them. */
  readonly liveUrl?: string;
  readonly csrf: string;
  /** Path prefix of our own files, as in `/assets/0a1b2c`. */
  readonly assets: string;
  readonly flash?: Flash;
  /** Stands at the right of the heading: the page's own buttons. */
  readonly tools?: ComponentChildren;
  /** One line under the heading. */
  readonly lede?: ComponentChildren;
  /** Of the sheet: "draft", "3". */
  readonly revision?: string;
  /** When the figures were read, shown in the zone of the job; absent where a page has none. */
  readonly asOf?: Date;
  readonly timeZone?: string;
}
