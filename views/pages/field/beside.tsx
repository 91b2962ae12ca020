import type { JSX } from 'preact';

export interface BesideLink {
  readonly href: string;
  readonly mark: string;
}

export interface BesideProps {
  /** What is gone along: "joint". */
  readonly of: string;
  readonly before: BesideLink | null;
  readonly after: BesideLink | null;
  readonly run: BesideLink;
}

/** To the things before and after along the run, and back to the run; at the foot, where the thumb is. */
export function Beside({ of, before, after, run }: BesideProps): JSX.Element {
  return (
    <nav class="beside" aria-label={`Along the run, ${of} by ${of}`}>
      {before === null ? (
        <span />
      ) : (
        <a class="button" href={before.href} rel="prev">
          <span aria-hidden="true">◂</span> <span class="unseen">{of} before: </span>
          {before.mark}
        </a>
      )}
      <a class="button" href={run.href}>
        <span class="unseen">Back to run </span>
        {run.mark}
      </a>
      {after === null ? (
        <span />
      ) : (
        <a class="button" href={after.href} rel="next">
          <span class="unseen">{of} after: </span>
          {after.mark} <span aria-hidden="true">▸</span>
        </a>
      )}
    </nav>
  );
}
