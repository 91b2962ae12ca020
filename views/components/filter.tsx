import type { ComponentChildren, JSX } from 'preact';
import { Button } from './button.tsx';

export interface FilterProps {
  readonly action: string;
  /** Where the list stands unfiltered; null while it is. */
  readonly clear: string | null;
  readonly label: string;
  readonly children: ComponentChildren;
}

/** Narrows a list: a GET form, so that what is shown has an address. */
export function Filter({ action, clear, label, children }: FilterProps): JSX.Element {
  return (
    <search>
      <form class="filter" method="get" action={action} aria-label={label}>
        {children}
        <Button>Show</Button>
        {clear !== null && <a href={clear}>Show all</a>}
      </form>
    </search>
  );
}
