import type { JSX } from 'preact';
import type { Activity, Labour, LabourLine } from '../../src/domain/labour/result.ts';
import type { LabourBook, UnitSystem } from '../../src/domain/model.ts';
import { ButtonLink } from '../components/button.tsx';
import { EmptyState } from '../components/empty-state.tsx';
import { InventedNotice } from '../components/invented-notice.tsx';
import { Notice } from '../components/notice.tsx';
import type { PagerProps } from '../components/pager.tsx';
import { HoursByLevel } from './hours/hours-by-level.tsx';
import { HoursLines } from './hours/hours-lines.tsx';
import { HoursRangePart } from './hours/hours-range.tsx';
import { HoursSpread, type HoursSpreadProps } from './hours/hours-spread.tsx';
import { LabourBookPart } from './hours/labour-book.tsx';
import type { Place } from './hours/place.ts';

export interface HoursPageProps {
  readonly jobId: string;
  readonly units: UnitSystem;
  readonly currency: string;
  readonly levels: readonly { readonly id: string; readonly name: string }[];
  readonly labour: Labour | null;
  readonly book: LabourBook | null;
  readonly leftOut: readonly string[];
  readonly spread: Omit<HoursSpreadProps, 'range'> | null;
  readonly mayMoney: boolean;
  /** One level by its activities, when it was asked for. */
  readonly place: Place | null;
  /** One activity line by line, when it was asked for. */
  readonly opened: {
    readonly activity: Activity | 'extra';
    readonly where: string;
    readonly lines: readonly LabourLine[];
    readonly runIds: ReadonlyMap<string, string>;
    readonly pager: PagerProps | null;
  } | null;
}

/** The job's hours by activity and level, their range, and the labour book they come from. */
export function HoursPage(props: HoursPageProps): JSX.Element {
  const { labour, book, leftOut } = props;
  if (labour === null || book === null)
    return (
      <EmptyState text="The job has no labour book yet, so no hours are worked. Each company keeps its own: the office enters it under Labour book, or brings it with the job document.">
        {props.mayMoney && (
          <p>
            <a href={`/jobs/${props.jobId}/labour-book/shelf`}>Take one of the company’s books, or the invented one</a>
          </p>
        )}
      </EmptyState>
    );
  if (props.opened !== null)
    return (
      <>
        <InventedNotice version={book.version} />
        <HoursLines {...props.opened} jobId={props.jobId} units={props.units} levels={props.levels} book={book} />
      </>
    );
  const byLevel = <HoursByLevel {...props} labour={labour} book={book} />;
  if (props.place !== null)
    return (
      <>
        <InventedNotice version={book.version} />
        {byLevel}
      </>
    );
  return (
    <>
      <InventedNotice version={book.version} />
      {leftOut.length > 0 && (
        <Notice
          kind="stop"
          text={`Without the hours of ${leftOut.slice(0, 8).join(', ')}${leftOut.length > 8 ? ` and ${leftOut.length - 8} more` : ''}: no sections can be laid there.`}
        />
      )}
      <HoursRangePart {...props} labour={labour} book={book} />
      {props.spread !== null && <HoursSpread {...props.spread} range={labour.range} />}
      {byLevel}
      <LabourBookPart {...props} book={book} />
    </>
  );
}

/** At the head of the page. */
export function HoursTools({ jobId, mayMoney }: { jobId: string; mayMoney: boolean }): JSX.Element {
  return (
    <>
      <ButtonLink href={`/jobs/${jobId}/crews`}>Crews over levels</ButtonLink>
      {mayMoney && <ButtonLink href={`/jobs/${jobId}/bid`}>Bid</ButtonLink>}
      {mayMoney && <ButtonLink href={`/jobs/${jobId}/what-if`}>What if</ButtonLink>}
      {mayMoney && <ButtonLink href={`/jobs/${jobId}/labour-book`}>Labour book</ButtonLink>}
      {mayMoney && <ButtonLink href={`/jobs/${jobId}/labour-book/shelf`}>Company’s books</ButtonLink>}
      <ButtonLink href={`/jobs/${jobId}/hours.csv`}>As CSV</ButtonLink>
    </>
  );
}
