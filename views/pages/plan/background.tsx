import type { JSX } from 'preact';
import type { BackgroundView } from '../../../src/document/background/schema.ts';
import type { UnitSystem } from '../../../src/domain/model.ts';
import { formatLength } from '../../../src/domain/units/format-length.ts';
import type { Length } from '../../../src/domain/units/length.ts';
import { Button } from '../../components/button.tsx';
import { DataTable } from '../../components/data-table.tsx';
import { DefinitionList } from '../../components/definition-list.tsx';
import { type Entered, faultProps } from '../../components/fault-of.ts';
import { TextField } from '../../components/field.tsx';
import { Form } from '../../components/form.tsx';
import { type FormFault, FormFaults } from '../../components/form-faults.tsx';
import { Part } from '../../components/part.tsx';
import { Time } from '../../components/time.tsx';
import { placedWords } from '../../words/background.ts';
import { CalibrationForm } from './calibration-form.tsx';
import { ORIENTATION_ONLY } from './level-plan.tsx';
import { PictureWithPins } from './picture-with-pins.tsx';
import { SendPicture } from './send-picture.tsx';

export type BackgroundForm = 'file' | 'page' | 'calibration' | 'removal';

export interface BackgroundPageProps {
  readonly base: string;
  readonly planHref: string;
  readonly assets: string;
  readonly csrf: string;
  readonly submissionId: string;
  readonly mayDesign: boolean;
  readonly units: UnitSystem;
  readonly zone: string | null;
  /** How a length may be typed. */
  readonly example: string;
  /** What files are taken. */
  readonly taken: string;
  readonly background: BackgroundView | null;
  /** As typed, else as it stands. */
  readonly calibration: Entered;
  readonly page: string;
  readonly faultOf: (form: BackgroundForm, name: string) => string | undefined;
  /** The same, all of them, for the head of the page. */
  readonly summary: readonly FormFault[];
  /** Where runs of the level start and end: places that the plan knows. */
  readonly places: readonly {
    readonly run: string;
    readonly start: { readonly x: Length; readonly y: Length };
    readonly end: { readonly x: Length; readonly y: Length };
  }[];
}

/** The picture under a level's plan: what it is, where it lies, and the forms that set it. */
export function BackgroundPage(props: BackgroundPageProps): JSX.Element {
  const { background, mayDesign, planHref } = props;
  return (
    <>
      <div class="stack">
        <FormFaults faults={props.summary} />
        <p>{ORIENTATION_ONLY}</p>
        <p>
          <a href={planHref}>Back to the plan</a>
        </p>
      </div>
      {background === null ? (
        <p class="soft">No picture lies under this plan.</p>
      ) : (
        <>
          <Facts {...props} background={background} />
          {mayDesign && <PageChoice {...props} background={background} />}
          <InPlace {...props} background={background} />
        </>
      )}
      {mayDesign && <SendPicture {...props} />}
    </>
  );
}

type WithBackground = BackgroundPageProps & { readonly background: BackgroundView };

function Facts({ background, zone }: WithBackground) {
  const { name, kind, page, pages, widthPx, heightPx, dotsPerInch, calibration } = background;
  const of = kind === 'pdf' ? `${name}, page ${page} of ${pages}` : name;
  const dots = dotsPerInch === null ? '' : `, drawn at ${Math.round(dotsPerInch)} dots to the inch`;
  return (
    <Part title="What it is" id="facts">
      <DefinitionList
        entries={[
          { term: 'File', value: of },
          { term: 'Size', value: `${widthPx} × ${heightPx} pixels${dots}` },
          {
            term: 'Sent',
            value: (
              <>
                <Time at={new Date(background.at)} zone={zone} /> by {background.by}
              </>
            ),
          },
          ...placedWords(calibration),
        ]}
      />
      {calibration !== null && calibration.notes.length > 0 && (
        <div class="faults asked">
          <h2>Worth a second look</h2>
          <ul>
            {calibration.notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </div>
      )}
    </Part>
  );
}

function PageChoice({ background, base, csrf, page, faultOf }: WithBackground) {
  if (!background.otherPages) return null;
  return (
    <Part title="Another page" id="page">
      <Form action={`${base}/page`} csrf={csrf} version={background.version}>
        <TextField
          name="page"
          id="f-other-page"
          label={`Page, 1 to ${background.pages}`}
          kind="number"
          value={page === '' ? String(background.page) : page}
          hint="The other pages are kept until the picture is set in place."
          {...faultProps((name) => faultOf('page', name), 'page')}
        />
        <Button>Show this page</Button>
      </Form>
    </Part>
  );
}

function InPlace(props: WithBackground) {
  const { background, mayDesign, base, assets, calibration } = props;
  const { sha256, widthPx: width, heightPx: height, name } = background;
  const picture = { href: `${base}/${sha256}.png`, width, height, name };
  return (
    <Part title={background.calibration === null ? 'Where it lies: not said yet' : 'Where it lies'} id="in-place">
      {mayDesign && (
        <p>
          Choose two points far apart that you know in the building, as crossings of grid lines. A is set first, then B.
        </p>
      )}
      <PictureWithPins {...picture} calibration={calibration} settable={mayDesign ? 'yes' : 'no'} />
      {mayDesign && <CalibrationForm {...props} />}
      {mayDesign && <KnownPlaces {...props} />}
      {mayDesign && <script src={`${assets}/background.js`} defer />}
    </Part>
  );
}

function KnownPlaces({ places, units }: BackgroundPageProps) {
  if (places.length === 0) return null;
  const at = ({ x, y }: { x: Length; y: Length }) => `${formatLength(x, units)}, ${formatLength(y, units)}`;
  return (
    <details>
      <summary>Places that the plan knows: where its runs start and end</summary>
      <DataTable
        caption="East and north of the level’s origin"
        rows={places}
        keyOf={({ run }) => run}
        columns={[
          { head: 'Run', kind: 'name', cell: ({ run }) => run },
          { head: 'Starts', kind: 'number', cell: ({ start }) => at(start) },
          { head: 'Ends', kind: 'number', cell: ({ end }) => at(end) },
        ]}
      />
    </details>
  );
}
