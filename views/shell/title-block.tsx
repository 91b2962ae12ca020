import type { JSX } from 'preact';
import { Time } from '../components/time.tsx';
import type { PageProps } from './props.ts';

/** The title block at the foot of every sheet, on the screen once and on paper on each page. */
export function TitleBlock({ job, title, revision, asOf, timeZone }: PageProps): JSX.Element {
  return (
    <footer class="title-block">
      <dl>
        <div>
          <dt>Job</dt>
          <dd>{job ? `${job.number}  ${job.name}` : 'Busway Job Book'}</dd>
        </div>
        <div>
          <dt>Sheet</dt>
          <dd>{title}</dd>
        </div>
        <div>
          <dt>Revision</dt>
          <dd>{revision ?? 'none'}</dd>
        </div>
        <div>
          <dt>As of</dt>
          <dd>{asOf ? <Time at={asOf} zone={timeZone} /> : 'no figures'}</dd>
        </div>
      </dl>
    </footer>
  );
}
