import type { Fault, PathPart } from '../fault.ts';
import type { Salvaged } from '../parsing/salvaged.ts';
import { sayNumber, sayValue } from '../parsing/say.ts';
import type { JobDocument } from '../schema/document.ts';
import { MAX_COORDINATE_MM } from '../schema/fields.ts';
import type { RunDocument } from '../schema/run.ts';
import { faultAt } from './fault-at.ts';
import { greatestLengthMm } from './run-extent.ts';

type Run = Salvaged<RunDocument>;
type Zones = Run['noJoint'];

/** More sections than this in one run is a stock length in the wrong unit, not a design. */
const MOST_SECTIONS = 10_000;

/** The geometry of each run: its end, its turns, and everything that stands along it. */
export function judgeRuns(document: Salvaged<JobDocument>): Fault[] {
  const shortest = new Map(
    (document.buswayTypes ?? []).map((type) => [type?.id, Math.min(...present(type?.stockLengthsMm))] as const),
  );
  return (document.runs ?? []).flatMap((run, i) => {
    if (!run) return [];
    const path = ['runs', i];
    return [
      ...judgeEnd(run, path),
      ...judgeLastTurn(run, path),
      ...judgeSize(run, path, shortest.get(run.type)),
      ...judgeCrossings(run, path),
      ...judgeZones(run, 'noJoint', run.noJoint, path),
      ...judgeZones(run, 'noSupport', run.noSupport, path),
      ...judgeFieldHold(run, path),
    ];
  });
}

function judgeEnd({ end }: Run, path: readonly PathPart[]): Fault[] {
  if (end?.reachMm === undefined || end.hardStopMm === undefined || end.reachMm <= end.hardStopMm) return [];
  const message = `The run must reach ${sayMm(end.reachMm)}, but its hard stop is at ${sayMm(end.hardStopMm)}.`;
  return [faultAt([...path, 'end', 'reachMm'], message, 'Let reachMm be at most hardStopMm: were the two swapped?')];
}

function judgeLastTurn({ legs }: Run, path: readonly PathPart[]): Fault[] {
  const turn = legs?.at(-1)?.turn;
  if (!legs || turn === undefined || turn === 'none') return [];
  const message = `The last leg turns ${turn}, but no leg follows it.`;
  const remedy = 'Add the leg after the turn, or write "none" for the turn of the last leg.';
  return [faultAt([...path, 'legs', legs.length - 1, 'turn'], message, remedy)];
}

function judgeSize(run: Run, path: readonly PathPart[], shortestMm: number | undefined): Fault[] {
  const length = greatestLengthMm(run);
  if (length === undefined) return [];
  if (length > MAX_COORDINATE_MM) {
    const message = `The legs add up to ${sayMm(length)}, more than ${sayMm(MAX_COORDINATE_MM)}.`;
    return [faultAt([...path, 'legs'], message, 'Lengths here are millimetres: check the legs.')];
  }
  if (shortestMm === undefined || length / shortestMm <= MOST_SECTIONS) return [];
  const message = `${sayMm(length)} could take more than ${sayNumber(MOST_SECTIONS)} sections of ${sayMm(shortestMm)}.`;
  return [
    faultAt([...path, 'legs'], message, "Lengths here are millimetres: check the legs and the type's stock lengths."),
  ];
}

function judgeCrossings(run: Run, path: readonly PathPart[]): Fault[] {
  return (run.crossings ?? []).flatMap((crossing, i) => {
    const what = `The ${crossing?.kind ?? 'crossing'}`;
    return judgeInside(run, [...path, 'crossings', i, 'atMm'], what, crossing?.atMm);
  });
}

function judgeZones(run: Run, key: string, zones: Zones, path: readonly PathPart[]): Fault[] {
  return (zones ?? []).flatMap((zone, i) => {
    const place = [...path, key, i];
    const { fromMm, toMm } = zone ?? {};
    if (fromMm !== undefined && toMm !== undefined && fromMm > toMm) {
      const message = `The zone begins at ${sayMm(fromMm)} and ends before that, at ${sayMm(toMm)}.`;
      return [faultAt([...place, 'fromMm'], message, 'Let fromMm be at most toMm: were the two swapped?')];
    }
    return [
      ...judgeInside(run, [...place, 'fromMm'], 'The beginning of the zone', fromMm),
      ...judgeInside(run, [...place, 'toMm'], 'The end of the zone', toMm),
    ];
  });
}

/** Sections stand one after the other; whether the route still lets them is the layout's to say. */
function judgeFieldHold({ fieldHold }: Run, path: readonly PathPart[]): Fault[] {
  let end = 0;
  return (fieldHold?.sections ?? []).flatMap((section, i) => {
    const { fromMm, toMm } = section ?? {};
    if (fromMm === undefined || toMm === undefined) return [];
    const place = [...path, 'fieldHold', 'sections', i, 'fromMm'];
    if (fromMm >= toMm) {
      const message = `The section begins at ${sayMm(fromMm)} and ends at ${sayMm(toMm)}.`;
      return [faultAt(place, message, 'Let fromMm be less than toMm: were the two swapped?')];
    }
    const before = end;
    end = Math.max(end, toMm);
    if (fromMm >= before) return [];
    const message = `The section begins at ${sayMm(fromMm)}, but the one before it ends at ${sayMm(before)}.`;
    return [faultAt(place, message, 'Name the sections in order from the feed, each from where the last one ends.')];
  });
}

/** A fault where a distance lies past the farthest that the run can reach. */
export function judgeInside(run: Run, path: readonly PathPart[], what: string, atMm: number | undefined): Fault[] {
  const length = greatestLengthMm(run);
  if (atMm === undefined || length === undefined || atMm <= length) return [];
  const message = `${what} is at ${sayMm(atMm)}, but run ${sayValue(run.id ?? '')} ends at ${sayMm(length)}.`;
  return [faultAt(path, message, 'Measure along the centre line from the feed, in millimetres; or lengthen the run.')];
}

function present(lengths: readonly (number | undefined)[] = []): number[] {
  return lengths.filter((length) => length !== undefined);
}

function sayMm(mm: number): string {
  return `${sayNumber(mm)} mm`;
}
