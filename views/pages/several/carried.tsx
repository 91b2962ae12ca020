import type { JSX } from 'preact';

/** What was typed and chosen, as the form was shown with it: text by name, and lists one item a line. */
export interface Carried {
  readonly fields: Readonly<Record<string, string>>;
  readonly runs: readonly string[];
  readonly levels?: readonly string[];
}

/** Carried along, so that exactly what was shown is written. */
export function CarriedFields({ fields, runs, levels = [] }: Carried): JSX.Element {
  return (
    <>
      {Object.entries(fields).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <input type="hidden" name="runs" value={runs.join('\n')} />
      {levels.length > 0 && <input type="hidden" name="levels" value={levels.join('\n')} />}
    </>
  );
}

/** Which runs a form is about, all of them by name. */
export function ChosenRuns({ runs, pickHref }: { runs: readonly string[]; pickHref: string }): JSX.Element {
  const [first] = runs;
  return (
    <div class="stack" id="f-runs">
      <p>
        <strong>{runs.length === 1 ? `Run ${first}` : `${runs.length} runs`}</strong>
        {' · '}
        <a href={pickHref}>choose others</a>
      </p>
      {runs.length > 1 && (
        <details>
          <summary>Their names</summary>
          <p>{runs.join(', ')}</p>
        </details>
      )}
      <input type="hidden" name="runs" value={runs.join('\n')} />
    </div>
  );
}
