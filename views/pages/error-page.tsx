import type { JSX } from 'preact';
import { Notice } from '../components/notice.tsx';

export interface ErrorPageProps {
  readonly problem: {
    readonly detail: string;
    readonly errors?:
      | readonly { readonly path: string; readonly message: string; readonly remedy: string }[]
      | undefined;
  };
}

/** Why something was not done, with every faulty field, and that what was entered is still in the browser's form. */
export function ErrorPage({ problem }: ErrorPageProps): JSX.Element {
  return (
    <div class="stack">
      <Notice kind="stop" text={problem.detail} />
      {problem.errors !== undefined && problem.errors.length > 0 && (
        <ul>
          {problem.errors.map((error) => (
            <li key={`${error.path}${error.message}`}>
              {error.path !== '' && <strong>{error.path}: </strong>}
              {error.message} {error.remedy}
            </li>
          ))}
        </ul>
      )}
      <p class="soft">Go back with your browser to find what you entered.</p>
    </div>
  );
}
