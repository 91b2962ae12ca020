import type { JSX } from 'preact';
import { type Entered, type FaultOf, faultProps } from '../../components/fault-of.ts';
import { SelectField, TextArea, TextField, TickField } from '../../components/field.tsx';
import { FragmentPage, type FragmentPageProps } from '../../components/fragment-page.tsx';
import { Part } from '../../components/part.tsx';
import { RowFields } from '../../components/row-fields.tsx';
import { typeEntryWord } from '../../words/type-entries.ts';
import { rowCount } from '../run-edit/fields.ts';

export interface BuswayTypePageProps extends Omit<FragmentPageProps, 'children' | 'wordOf' | 'save'> {
  readonly entered: Entered;
  readonly faultOf: FaultOf;
  readonly example: string;
  readonly currency: string;
}

interface GroupProps {
  readonly entry: (path: string) => {
    name: string;
    label: string;
    value: string;
    fault?: string;
  };
}

/** A busway type, typed in from the maker's sheet. */
export function BuswayTypePage(props: BuswayTypePageProps): JSX.Element {
  const { entered, faultOf, example, currency, ...form } = props;
  const entry: GroupProps['entry'] = (path) => ({
    name: path,
    label: typeEntryWord(path),
    value: entered[path] ?? '',
    ...faultProps(faultOf, path),
  });
  return (
    <FragmentPage {...form} wordOf={typeEntryWord} save="Save the busway type">
      <Sheet entry={entry} />
      <Sections entry={entry} example={example} />
      <Joint entry={entry} />
      <Clearances entry={entry} />
      <Fittings entry={entry} />
      <Prices entry={entry} entered={entered} faultOf={faultOf} currency={currency} />
    </FragmentPage>
  );
}

function Tick({ entry, path }: GroupProps & { path: string }) {
  const { value, ...rest } = entry(path);
  return <TickField {...rest} ticked={value === 'yes' ? 'yes' : 'no'} />;
}

function Sheet({ entry }: GroupProps) {
  return (
    <Part title="Sheet and ratings" id="sheet">
      <div class="fields">
        <TextField {...entry('id')} need="required" hint="By amperes and poles, as my-225A-3PN." />
        <TextField {...entry('sheet.document')} />
        <TextField {...entry('sheet.revision')} />
        <TextField {...entry('sheet.date')} />
        <TextField {...entry('ratedCurrentA')} kind="number" unit="A" need="required" />
        <TextField {...entry('ratedVoltageV')} kind="number" unit="V" need="required" />
        <TextField {...entry('poles')} kind="number" need="required" hint="Without the neutral, as 3." />
        <SelectField
          {...entry('neutral')}
          options={[
            { value: 'none', word: 'none' },
            { value: 'full', word: 'full' },
            { value: 'double', word: 'double' },
          ]}
        />
        <TextField {...entry('phaseOhmPerKm.r')} kind="number" unit="Ω/km" need="required" />
        <TextField {...entry('phaseOhmPerKm.x')} kind="number" unit="Ω/km" need="required" />
        <TextField {...entry('neutralOhmPerKm.r')} kind="number" unit="Ω/km" />
        <TextField {...entry('neutralOhmPerKm.x')} kind="number" unit="Ω/km" />
        <TextField {...entry('shortCircuitKA')} kind="number" unit="kA" need="required" />
        <TextField {...entry('shortCircuitCycles')} kind="number" />
        <Tick entry={entry} path="hundredPercentRated" />
      </div>
    </Part>
  );
}

function Sections({ entry, example }: GroupProps & { readonly example: string }) {
  return (
    <Part title="Sections and feed" id="sections">
      <div class="fields">
        <TextField {...entry('weightKgPerM')} kind="quantity" need="required" hint="As 12.6 kg/m or 8.5 lb/ft." />
        <TextField {...entry('stockLengthsMm')} need="required" hint={`Separated by ; each like ${example}.`} />
        <TextField {...entry('factoryCut.minMm')} kind="length" hint="All three empty: no lengths are cut." />
        <TextField {...entry('factoryCut.maxMm')} kind="length" />
        <TextField {...entry('factoryCut.stepMm')} kind="length" />
        <TextField {...entry('feed.weightKg')} kind="quantity" hint="As 9 kg or 20 lb." />
        <Tick entry={entry} path="feed.joins" />
      </div>
    </Part>
  );
}

function Joint({ entry }: GroupProps) {
  return (
    <Part title="Joint" id="joint">
      <div class="fields">
        <TextField {...entry('joint.clamps')} kind="number" hint="2 when empty." />
        <TextField {...entry('joint.contactSets')} kind="number" hint="1 when empty." />
        <TextField {...entry('joint.bolts')} kind="number" hint="2 when empty." />
        <TextField
          {...entry('joint.torqueNm')}
          kind="quantity"
          hint="From the sheet, as 24 N·m or 18 lbf·ft. There is no default."
        />
        <TextField {...entry('words.clamp')} />
        <TextField {...entry('words.contactSet')} />
        <TextField {...entry('words.seatingTool')} />
      </div>
      <TextArea
        {...entry('joint.steps')}
        kind="sheet"
        rows={12}
        hint="In the sheet’s order. A line that begins with HOLD: is a hold point, TORQUE: takes a torque reading, CHECK: is done by another person. Without steps no joint of this type can be accepted."
      />
    </Part>
  );
}

function Clearances({ entry }: GroupProps) {
  return (
    <>
      <Part title="Hangers" id="hangers">
        <div class="fields">
          <TextField
            {...entry('support.maxSpacingMm')}
            kind="length"
            hint="As the busway is marked. Empty is unknown."
          />
          <TextField {...entry('support.source')} />
          <TextField {...entry('support.maxEndOverhangMm')} kind="length" />
          <TextField {...entry('support.jointClearMm')} kind="length" />
          <TextField {...entry('support.fittingWithinMm')} kind="length" />
          <TextField {...entry('support.stepMm')} kind="length" hint="1 in or 50 mm when empty." />
        </div>
      </Part>
      <Part title="Tap-offs" id="tap-offs">
        <div class="fields">
          <TextField {...entry('tap.jointClearMm')} kind="length" />
          <TextField {...entry('tap.endClearMm')} kind="length" />
          <TextField {...entry('tap.minSpacingMm')} kind="length" />
          <TextField {...entry('tap.boxLengthMm')} kind="length" />
          <TextField
            {...entry('tap.boxDepthMm')}
            kind="length"
            hint="From the middle of the busway to the face of the box. Empty: runs across an aisle are not compared."
          />
          <TextField
            {...entry('tap.faceClearMm')}
            kind="length"
            hint="What the sheet or the local code’s working space asks for, whichever is more."
          />
          <TextField
            {...entry('tap.boxHeightMm')}
            kind="length"
            hint="Asked for where runs that face each other hang at different heights."
          />
        </div>
      </Part>
      <Part title="Walls and floors" id="crossings">
        <div class="fields">
          <TextField {...entry('crossing.jointClearMm')} kind="length" />
          <TextField {...entry('crossing.supportClearMm')} kind="length" />
        </div>
      </Part>
    </>
  );
}

function Fittings({ entry }: GroupProps) {
  return (
    <Part title="Fittings" id="fittings">
      <div class="fields">
        <TextField
          {...entry('fittings.elbow.legMm')}
          kind="length"
          hint="Centre line to the face of each arm. Empty: there is none."
        />
        <TextField {...entry('fittings.elbow.weightKg')} kind="quantity" />
        <Tick entry={entry} path="fittings.elbow.handed" />
        <TextField {...entry('fittings.tee.legMm')} kind="length" />
        <TextField {...entry('fittings.tee.weightKg')} kind="quantity" />
        <Tick entry={entry} path="fittings.tee.handed" />
      </div>
    </Part>
  );
}

function Prices(
  props: GroupProps & { readonly entered: Entered; readonly faultOf: FaultOf; readonly currency: string },
) {
  const { entry, entered, faultOf, currency } = props;
  const names = [
    'sectionPerM',
    'cutSurcharge',
    'jointKit',
    'elbow',
    'tee',
    'endFeed',
    'endCap',
    'support',
    'tap',
    'drop',
  ];
  return (
    <Part title={`Prices in ${currency}, for the office alone`} id="prices">
      <RowFields
        caption="Price of each stock length"
        hint="An absent price is unknown, not nought."
        group="sectionPrices"
        noun="length"
        rows={rowCount(entered, 'sectionPrices', 2)}
        entered={entered}
        faultOf={faultOf}
        fields={[
          { name: 'lengthMm', head: 'Length' },
          { name: 'price', head: 'Price' },
        ]}
      />
      <div class="fields">
        {names.map((name) => (
          <TextField key={name} {...entry(`prices.${name}`)} kind="number" />
        ))}
      </div>
    </Part>
  );
}
