import type { ComponentChildren, JSX } from 'preact';

export interface Definition {
  readonly term: string;
  readonly value: ComponentChildren;
}

/** Named facts, one below the other. */
export function DefinitionList({ entries }: { entries: readonly Definition[] }): JSX.Element {
  return (
    <dl class="pairs">
      {entries.map((entry) => (
        <>
          <dt>{entry.term}</dt>
          <dd>{entry.value}</dd>
        </>
      ))}
    </dl>
  );
}
