import type { ComponentChildren, JSX } from 'preact';
import { ButtonLink } from '../../components/button.tsx';

export interface NextUpProps {
  /** "Hang P03". */
  readonly what: string;
  /** "section 20'-0\", tap-offs face NORTH". */
  readonly how?: ComponentChildren;
  readonly href: string;
  /** On the button: "Card of P03". */
  readonly go: string;
}

/** The next thing to do, large, with the way to it. */
export function NextUp({ what, how, href, go }: NextUpProps): JSX.Element {
  return (
    <section class="next-up" aria-label="Next">
      <h2>Next: {what}</h2>
      {how !== undefined && <p>{how}</p>}
      <ButtonLink href={href} kind="lead">
        {go}
      </ButtonLink>
    </section>
  );
}
