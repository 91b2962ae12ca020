import type { JSX } from 'preact';
import type { BuswayType, Run, UnitSystem } from '../../../src/domain/model.ts';
import { formatLength } from '../../../src/domain/units/format-length.ts';
import type { Length } from '../../../src/domain/units/length.ts';
import { formatTorque } from '../../../src/domain/units/quantities.ts';
import { type Definition, DefinitionList } from '../../components/definition-list.tsx';
import { Part } from '../../components/part.tsx';
import { compassWord } from '../../drawings/compass.ts';
import { crossingWords, feedWords } from '../../drawings/strip/words.ts';

export interface RunFactsProps {
  readonly units: UnitSystem;
  readonly levelName: string;
  readonly run: Run;
  readonly type: BuswayType;
  readonly runHref: (label: string) => string | null;
}

const unknown = <span class="soft">not stated</span>;

/** The design as it was entered, in words. */
export function RunFacts(props: RunFactsProps): JSX.Element {
  return (
    <Part title="Design" id="design">
      <div class="columns">
        <DefinitionList entries={placeOf(props)} />
        <DefinitionList entries={hangingOf(props)} />
      </div>
    </Part>
  );
}

function placeOf({ units, levelName, run, type, runHref }: RunFactsProps): Definition[] {
  const { start, feed } = run;
  const paired = run.pairedRun;
  return [
    { term: 'Level', value: run.area === null ? levelName : `${levelName}, ${run.area}` },
    { term: 'Busway type', value: sayType(type) },
    ...(run.side === null ? [] : [{ term: 'Feed side', value: `${run.side}-side` }]),
    ...(paired === null ? [] : [{ term: 'Paired with', value: <RunLink label={paired} href={runHref(paired)} /> }]),
    {
      term: 'Feed',
      value: [
        feedWords(feed),
        ...(feed.at === null ? [] : [`at ${formatLength(feed.at, units)}`]),
        ...(feed.branchSide === null ? [] : [`leaving to the ${feed.branchSide}`]),
        ...(feed.deviceA === null ? [] : [`device ${feed.deviceA} A`]),
      ].join(', '),
    },
    { term: 'Conductor side', value: `${run.conductorSide}, looking away from the feed with the slot down` },
    {
      term: 'Start',
      value: `${formatLength(start.x, units)} east, ${formatLength(start.y, units)} north, ${formatLength(start.z, units)} up`,
    },
    { term: 'First heading', value: compassWord(run.headingDeg) },
    { term: 'Legs', value: sayLegs(run, units) },
    ...(run.end === null
      ? []
      : [
          {
            term: 'End of the last leg',
            value: `reaches ${formatLength(run.end.reach, units)} at least, ${formatLength(run.end.hardStop, units)} at most`,
          },
        ]),
  ];
}

function hangingOf({ units, run, type }: RunFactsProps): Definition[] {
  return [
    {
      term: 'Structure',
      value:
        run.structure.kind === 'continuous'
          ? 'carries a hanger anywhere'
          : `lines every ${formatLength(run.structure.pitch, units)} from ${formatLength(run.structure.offset, units)}`,
    },
    { term: 'Held by', value: run.attachment?.replace('-', ' ') ?? unknown },
    { term: 'Rod', value: run.rod ?? unknown },
    { term: 'Rod for each hanger', value: length(run.drop, units) },
    {
      term: 'Greatest spacing of hangers',
      value: length(type.support.maxSpacing, units),
    },
    { term: 'Joint torque', value: type.joint.torqueNm === null ? unknown : formatTorque(type.joint.torqueNm, units) },
    ...run.crossings.map((crossing) => ({
      term: 'Passes',
      value: `${crossingWords(crossing)} of ${formatLength(crossing.thickness, units)} at ${formatLength(crossing.at, units)}`,
    })),
    ...run.noJoint.map((zone) => ({ term: 'No joint', value: sayZone(zone, units) })),
    ...run.noSupport.map((zone) => ({ term: 'No hanger', value: sayZone(zone, units) })),
  ];
}

function RunLink({ label, href }: { label: string; href: string | null }) {
  return href === null ? <span>{label}</span> : <a href={href}>{label}</a>;
}

function length(value: Length | null, units: UnitSystem) {
  return value === null ? unknown : formatLength(value, units);
}

function sayZone(zone: Run['noJoint'][number], units: UnitSystem): string {
  const reason = zone.reason === null ? '' : `, ${zone.reason}`;
  return `${formatLength(zone.from, units)} to ${formatLength(zone.to, units)}${reason}`;
}

function sayLegs(run: Run, units: UnitSystem): string {
  return run.legs
    .map((leg) => `${formatLength(leg.length, units)}${leg.turn === 'none' ? '' : `, then ${leg.turn}`}`)
    .join('; ');
}

function sayType(type: BuswayType): string {
  const sheet = type.sheet === null ? 'no sheet named' : `${type.sheet.document}, rev. ${type.sheet.revision}`;
  return `${type.id}: ${type.ratedCurrentA} A, ${type.poles} poles; ${sheet}`;
}
