import type { ComponentChildren, JSX } from 'preact';

/** `lead`: the one thing this form is for. `stops`: takes something away. `plain`: beside more important ones. */
export type ButtonKind = 'usual' | 'lead' | 'stops' | 'plain';

export interface ButtonProps {
  readonly kind?: ButtonKind;
  readonly name?: string;
  readonly value?: string;
  /** Why it cannot be pressed now; stands beside it, since a greyed button alone explains nothing. */
  readonly barred?: string;
  readonly children: ComponentChildren;
}

/** Sends its form. */
export function Button({ kind = 'usual', name, value, barred, children }: ButtonProps): JSX.Element {
  const button = (
    <button class={classOf(kind)} type="submit" name={name} value={value} disabled={barred !== undefined}>
      {children}
    </button>
  );
  if (barred === undefined) return button;
  return (
    <span class="row">
      {button}
      <span class="hint">{barred}</span>
    </span>
  );
}

/** Goes somewhere, and looks like a button because it is the page's main next step. */
export function ButtonLink(props: { href: string; kind?: ButtonKind; children: ComponentChildren }): JSX.Element {
  return (
    <a class={classOf(props.kind ?? 'usual')} href={props.href}>
      {props.children}
    </a>
  );
}

function classOf(kind: ButtonKind): string {
  return kind === 'usual' ? 'button' : `button ${kind}`;
}
