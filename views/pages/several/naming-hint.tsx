import type { JSX } from 'preact';

/** How a naming of one's own is written. */
export function NamingHint({ usual }: { usual: string }): JSX.Element {
  return (
    <>
      Empty: {usual}. Or a text with {'{level}'}, {'{row}'}, {'{side}'} and {'{run}'}, such as{' '}
      <span class="whole">{'{level}-R{row}-{side}'}</span>.
    </>
  );
}
