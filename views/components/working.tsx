import type { ComponentChildren, JSX } from 'preact';

export interface WorkingInput {
  readonly name: string;
  /** With its unit, as text. */
  readonly value: string;
  readonly source: string;
}

export interface WorkingProps {
  /** The figure itself; stays in sight. */
  readonly figure: ComponentChildren;
  /** What the figure is, for those who cannot see the column: "hours of joints on F1". */
  readonly of: string;
  /** As in `hours = quantity × base hours × factors`. */
  readonly formula: string;
  /** The same with the figures in. */
  readonly filledIn?: string;
  readonly inputs: readonly WorkingInput[];
  /** The standard, sheet or book the formula comes from, or the way to more of it. */
  readonly source: ComponentChildren;
}

/** A computed figure that opens to its working: formula, inputs and where each came from. */
export function Working({ figure, of, formula, filledIn, inputs, source }: WorkingProps): JSX.Element {
  return (
    <details class="working">
      <summary>
        {figure}
        <span class="unseen"> – the working of {of}</span>
      </summary>
      <div class="stack">
        <p class="formula">{formula}</p>
        {filledIn !== undefined && <p class="formula">{filledIn}</p>}
        <dl class="pairs">
          {inputs.map((input) => (
            <>
              <dt>{input.name}</dt>
              <dd>
                {input.value} <span class="soft">{input.source}</span>
              </dd>
            </>
          ))}
        </dl>
        <p class="soft">{source}</p>
      </div>
    </details>
  );
}
