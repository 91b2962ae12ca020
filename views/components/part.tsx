import type { ComponentChildren, JSX } from 'preact';

export interface PartProps {
  readonly title: string;
  readonly id?: string;
  /** At the right of the heading: links and buttons of this part. */
  readonly tools?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** A part of the sheet under its own heading and rule. */
export function Part({ title, id, tools, children }: PartProps): JSX.Element {
  return (
    <section class="part" id={id}>
      <div class="part-head">
        <h2>{title}</h2>
        {tools && <div class="row">{tools}</div>}
      </div>
      {children}
    </section>
  );
}
