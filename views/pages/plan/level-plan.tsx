import type { JSX } from 'preact';
import type { UnitSystem } from '../../../src/domain/model.ts';
import { Drawing } from '../../components/drawing.tsx';
import { EmptyState } from '../../components/empty-state.tsx';
import { SelectField } from '../../components/field.tsx';
import { Filter } from '../../components/filter.tsx';
import { MarkLegend } from '../../components/mark.tsx';
import { Part } from '../../components/part.tsx';
import { PrintDrawing } from '../../components/print-drawing.tsx';
import { FloorPlan, type PlanRun, type Underlay, type Window } from '../../drawings/floor-plan.tsx';
import { QUARTERS } from '../../drawings/plan/extent.ts';

/** How much of the picture lies under the plan. */
export const UNDER = ['light', 'full', 'none'] as const;
export type UnderName = (typeof UNDER)[number];

/** Said wherever a picture lies under a plan. */
export const ORIENTATION_ONLY =
  'The picture is for orientation, not for dimensions: runs lie where their figures say. Measure on site.';

export interface LevelPlanPageProps {
  readonly path: string;
  /** Where the picture under the plan is set. */
  readonly pictureHref: string;
  /** Whether there is a picture, and whether two points say where it lies. */
  readonly pictured: 'not' | 'unplaced' | 'placed';
  readonly under: UnderName;
  readonly underlay?: Underlay;
  readonly mayDesign: boolean;
  readonly levelName: string;
  readonly units: UnitSystem;
  readonly runs: readonly PlanRun[];
  /** What of the level is shown: "whole", a quarter, "picture", or the label of a run. */
  readonly shown: string;
  readonly window: Window | null;
}

/** A level to scale: the whole, a quarter of it or the surroundings of one run, each at an address of its own. */
export function LevelPlanPage(props: LevelPlanPageProps): JSX.Element {
  const { path, levelName, units, runs, shown, window, underlay, under } = props;
  if (runs.length === 0 && underlay === undefined)
    return (
      <>
        <EmptyState text="No run hangs here yet, so there is nothing to draw." />
        <Picture {...props} />
      </>
    );
  const of = shown === 'whole' ? `Plan of ${levelName}` : `Plan of ${levelName}: ${shown}`;
  return (
    <>
      <Part title={shown === 'whole' ? 'Whole level' : shown === 'picture' ? 'Whole picture' : shown} id="plan">
        <Views {...props} />
        {underlay !== undefined && <p class="soft">{ORIENTATION_ONLY}</p>}
        <Drawing label={of}>
          <FloorPlan
            level={levelName}
            runs={runs}
            units={units}
            ink="screen"
            width={1180}
            tallest={1100}
            window={window ?? undefined}
            underlay={underlay}
            detailed
          />
        </Drawing>
        <MarkLegend of="piece" />
        <Signs shown={shown} />
      </Part>
      <Part title="On paper" id="print">
        <PrintDrawing
          href={path}
          units={units}
          of={`the plan of ${levelName}`}
          id="plan"
          query={underlay === undefined ? {} : { picture: under }}
        />
        {props.pictured === 'placed' && (
          <p class="soft">
            {underlay === undefined
              ? 'Prints leave the picture out, as it is above.'
              : 'PDF and SVG show the picture under the plan, pale. Choose “none” above to leave it out; DXF never has it.'}
          </p>
        )}
      </Part>
      <Picture {...props} />
    </>
  );
}

function Picture({ pictured, pictureHref, mayDesign, levelName }: LevelPlanPageProps) {
  if (pictured === 'not' && !mayDesign) return null;
  const words = {
    not: 'No picture lies under this plan yet. A PNG or a page of a PDF can, set in place by two points.',
    unplaced: 'A picture is here, and two points must still say where it lies; until then it is not shown.',
    placed: 'A picture lies under this plan, set in place by two points.',
  };
  const does = pictured === 'not' ? 'Put a picture under the plan' : 'Picture under the plan';
  return (
    <Part title="Picture" id="picture">
      <p>{words[pictured]}</p>
      <p>
        <a href={pictureHref}>
          {does} of {levelName}
        </a>
      </p>
    </Part>
  );
}

/** Only what is not the usual stands in an address. */
function hrefOf(path: string, show: string, under: UnderName): string {
  const query = new URLSearchParams({
    ...(show === 'whole' ? {} : { show }),
    ...(under === 'light' ? {} : { picture: under }),
  });
  return query.size === 0 ? path : `${path}?${query}`;
}

/** A few words of which one is chosen and the others are links. */
function Links(props: {
  label: string;
  now: string;
  links: readonly { readonly value: string; readonly word: string; readonly href: string }[];
}) {
  return (
    <nav class="row" aria-label={props.label}>
      {props.links.map(({ value, word, href }) =>
        value === props.now ? (
          <strong key={value} aria-current="true">
            {word}
          </strong>
        ) : (
          <a key={value} href={href}>
            {word}
          </a>
        ),
      )}
    </nav>
  );
}

function Views({ path, runs, shown, pictured, under }: LevelPlanPageProps) {
  const parts = ['whole', ...QUARTERS, ...(pictured === 'placed' ? ['picture'] : [])];
  return (
    <>
      <Links
        label="Parts of the plan"
        now={shown}
        links={parts.map((part) => ({
          value: part,
          word: part === 'whole' ? 'whole level' : part === 'picture' ? 'whole picture' : part,
          href: hrefOf(path, part, under),
        }))}
      />
      {pictured === 'placed' && (
        <div class="row">
          <span>Picture under it:</span>
          <Links
            label="Picture under the plan"
            now={under}
            links={UNDER.map((name) => ({ value: name, word: name, href: hrefOf(path, shown, name) }))}
          />
        </div>
      )}
      <Filter action={path} clear={null} label="One run">
        {under !== 'light' && <input type="hidden" name="picture" value={under} />}
        <SelectField
          name="show"
          label="Round one run"
          value={shown}
          options={runs.map(({ id }) => ({ value: id, word: id }))}
        />
      </Filter>
    </>
  );
}

function Signs({ shown }: { shown: string }) {
  return (
    <p class="soft">
      A filled dot is an end feed, a filled square a centre feed, an open dot a tee. Ticks are tap-offs; the arrow shows
      the way they face. Hatching across a run is a wall or floor, crosswise where it holds back fire. Thin broken lines
      are the structure that hangers can be fixed to, with their distance from the level’s origin.{' '}
      {shown === 'whole' && 'A tap-off’s mark stands where it has room: a quarter or one run shows more of them. '}
      Press a run for its page.
    </p>
  );
}
