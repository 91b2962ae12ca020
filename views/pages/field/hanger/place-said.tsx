import type { JSX } from 'preact';
import { formatLength } from '../../../../src/domain/units/format-length.ts';
import type { Length } from '../../../../src/domain/units/length.ts';
import { Sign } from '../../../components/sign.tsx';
import type { Speech, Told } from '../../../words/quality.ts';
import { beside } from '../told-text.ts';

/** What the rules say of a place that was typed: ok, or which gap broke and where it may stand; or that it is no length. */
export type PlaceVerdict =
  | { readonly is: 'ok'; readonly at: Length; readonly note: string | null }
  | { readonly is: 'broken'; readonly at: Length; readonly told: Told }
  | { readonly is: 'unread'; readonly problem: string; readonly remedy: string };

export function PlaceSaid({ asked, say }: { asked: PlaceVerdict; say: Speech }): JSX.Element {
  switch (asked.is) {
    case 'ok':
      return (
        <p class="verdict">
          <Sign of="done" /> <strong>OK at {formatLength(asked.at, say.units)}.</strong> No rule of the layout is
          broken.
          {asked.note !== null && ` ${asked.note}`}
        </p>
      );
    case 'broken':
      return (
        <p class="verdict stop">
          <Sign of="stop" /> <strong>Not at {formatLength(asked.at, say.units)}.</strong> {beside(asked.told)}
        </p>
      );
    case 'unread':
      return (
        <p class="verdict stop">
          <Sign of="stop" /> {asked.problem} {asked.remedy}
        </p>
      );
  }
}
