import type { ComponentChildren, JSX } from 'preact';

const USUAL = [
  'Work on it isolated, locked out, and with absence of voltage proved.',
  'A qualified person does the work; local rules, the authority having jurisdiction and the maker’s sheet decide.',
  'These figures are for planning and record. They are no permission and no sealed design.',
];

/** The usual cautions, on every page that leads to energised work; `children` adds what is special here. */
export function Caution({ children }: { children?: ComponentChildren }): JSX.Element {
  return (
    <section class="caution" aria-label="Caution">
      <h2>Caution</h2>
      {children}
      <ul>
        {USUAL.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </section>
  );
}
