import type { JSX } from 'preact';

export interface OneTimeProps {
  readonly title: string;
  readonly secret: string;
  readonly remark: string;
}

/** A secret that is shown this once: easy to select whole, and to type off. */
export function OneTime({ title, secret, remark }: OneTimeProps): JSX.Element {
  return (
    <section class="one-time" aria-label={title}>
      <h2>{title}</h2>
      <p class="secret">
        <code>{secret}</code>
      </p>
      <p>{remark}</p>
    </section>
  );
}
