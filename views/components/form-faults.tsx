import type { JSX } from 'preact';

export interface FormFault {
  /** Id of the field it stands beside: `f-` and its name. */
  readonly field: string;
  readonly label: string;
  readonly message: string;
}

/** Over a refused form: how many entries need attention, each a link to its field. Nothing when there is none. */
export function FormFaults({ faults }: { faults: readonly FormFault[] }): JSX.Element | null {
  if (faults.length === 0) return null;
  const count = faults.length === 1 ? 'One entry needs' : `${faults.length} entries need`;
  return (
    <div class="faults" role="alert" tabIndex={-1}>
      <h2>{count} your attention; nothing was saved yet</h2>
      <ul>
        {faults.map((fault) => (
          <li key={fault.field}>
            <a href={`#${fault.field}`}>{fault.label}</a>: {fault.message}
          </li>
        ))}
      </ul>
    </div>
  );
}
