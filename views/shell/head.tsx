import type { JSX } from 'preact';
import { JOB_PARTS, jobPartHref } from './job-parts.ts';
import type { PageProps } from './props.ts';

/** The head of the sheet: the book, where you are, who you are, and the parts of the job on a scale rule. */
export function Head({ viewer, job, part, trail, csrf }: PageProps): JSX.Element {
  return (
    <header class="head">
      <div class="head-line">
        <a class="book" href="/">
          <BookSign />
          Job Book
        </a>
        {trail.length > 0 && (
          <nav class="trail" aria-label="Where you are">
            <ol>
              {trail.map((crumb) => (
                <li key={crumb.href}>
                  <a href={crumb.href}>{crumb.word}</a>
                </li>
              ))}
            </ol>
          </nav>
        )}
        {viewer && (
          <form class="viewer" method="post" action="/sign-out">
            <input type="hidden" name="_csrf" value={csrf} />
            <span>
              <a href="/me">{viewer.name}</a>, <span class="soft">{viewer.roleWord}</span>
            </span>
            <button class="button plain" type="submit">
              Sign out
            </button>
          </form>
        )}
      </div>
      {job && (
        <nav class="parts" aria-label="Parts of the job">
          <ul>
            {JOB_PARTS.map((entry) => (
              <li key={entry.part}>
                <a href={jobPartHref(job.id, entry.part)} aria-current={entry.part === part ? 'page' : undefined}>
                  {entry.word}
                </a>
              </li>
            ))}
          </ul>
        </nav>
      )}
      <div class="scale" />
    </header>
  );
}

/** A joint of a run on its two rods, half made up. */
function BookSign() {
  return (
    <svg width="28" height="20" viewBox="0 0 28 20" aria-hidden="true" fill="none" stroke="currentColor">
      <path d="M6 0v6M22 0v6" stroke-width="1.5" />
      <path d="M1 7h26v8H1z" stroke-width="1.5" />
      <path d="M1 11h13v4H1zM12 5h4v12h-4z" fill="currentColor" stroke="none" />
    </svg>
  );
}
