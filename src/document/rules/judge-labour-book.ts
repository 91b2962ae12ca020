import type { Fault, PathPart } from '../fault.ts';
import type { Salvaged } from '../parsing/salvaged.ts';
import { sayNumber, sayValue } from '../parsing/say.ts';
import type { JobDocument } from '../schema/document.ts';
import type { LabourBookDocument } from '../schema/labour-book.ts';
import { faultAt } from './fault-at.ts';

type Book = Salvaged<LabourBookDocument>;
type Hours = { readonly low?: number; readonly likely?: number; readonly high?: number };

/** Three points stand in their order, a band or a height is named once, and a crew does some work. */
export function judgeLabourBook({ labourBook }: Salvaged<JobDocument>): Fault[] {
  if (!labourBook) return [];
  return [
    ...judgeActivities(labourBook),
    ...judgeHeights(labourBook),
    ...judgeJobConditions(labourBook),
    ...judgeNonProductive(labourBook),
    ...judgeCrew(labourBook),
  ];
}

function judgeActivities({ activities }: Book): Fault[] {
  return Object.entries(activities ?? {}).flatMap(([id, activity]) => {
    const path = ['labourBook', 'activities', id];
    const bands = activity?.bands ?? [];
    return [
      ...judgeHours(activity ?? {}, path, `Activity ${sayValue(id)}`),
      ...bands.flatMap((band, i) => judgeHours(band ?? {}, [...path, 'bands', i], `Band ${i + 1} of ${sayValue(id)}`)),
      ...judgeBands(bands, [...path, 'bands'], sayValue(id)),
    ];
  });
}

type Band = { readonly upToA?: number; readonly upToMm?: number } | undefined;

/** Every band says what it is for, once; of an activity either all bands name a rated current or none does. */
function judgeBands(bands: readonly Band[], path: readonly PathPart[], id: string): Fault[] {
  const mixed =
    bands.some((band) => band?.upToA !== undefined) && bands.some((band) => band && band.upToA === undefined);
  return bands.flatMap((band, i): Fault[] => {
    if (band === undefined) return [];
    const { upToA, upToMm } = band;
    const at = (key: string) => [...path, i, key];
    if (upToA === undefined && upToMm === undefined)
      return [
        faultAt(
          at('upToMm'),
          `Band ${i + 1} of ${id} says neither a length nor a rated current.`,
          'Give upToMm, upToA or both.',
        ),
      ];
    if (mixed && upToA === undefined)
      return [
        faultAt(
          at('upToA'),
          `Band ${i + 1} of ${id} has no rated current, and others have one.`,
          'Give it one too, or take it off the others.',
        ),
      ];
    if (bands.findIndex((one) => one?.upToA === upToA && one?.upToMm === upToMm) === i) return [];
    const said = [
      ...(upToA === undefined ? [] : [`${sayNumber(upToA)} A`]),
      ...(upToMm === undefined ? [] : [`${sayNumber(upToMm)} mm`]),
    ];
    return [
      faultAt(
        at(upToMm === undefined ? 'upToA' : 'upToMm'),
        `${said.join(' and ')} stands here twice.`,
        'Keep the entry that holds.',
      ),
    ];
  });
}

function judgeHours({ low, likely, high }: Hours, path: readonly PathPart[], what: string): Fault[] {
  const faults: Fault[] = [];
  if (low !== undefined && likely !== undefined && low > likely) {
    const message = `${what}: the low hours, ${sayNumber(low)}, are more than the likely ones, ${sayNumber(likely)}.`;
    faults.push(faultAt([...path, 'low'], message, 'Let low be at most likely.'));
  }
  if (likely !== undefined && high !== undefined && likely > high) {
    const message = `${what}: the likely hours, ${sayNumber(likely)}, are more than the high ones, ${sayNumber(high)}.`;
    faults.push(faultAt([...path, 'high'], message, 'Let high be at least likely.'));
  }
  return faults;
}

function judgeHeights({ factors }: Book): Fault[] {
  return judgeOnce(
    (factors?.height ?? []).map((band) => band?.overMm),
    (i) => ['labourBook', 'factors', 'height', i, 'overMm'],
  );
}

function judgeOnce(values: readonly (number | undefined)[], pathOf: (i: number) => PathPart[]): Fault[] {
  return values.flatMap((value, i) => {
    if (value === undefined || values.indexOf(value) === i) return [];
    return [faultAt(pathOf(i), `${sayNumber(value)} mm stands here twice.`, 'Keep the entry that holds.')];
  });
}

/** A condition of the job that stands twice, or is called like one of a level, could not be told from the other. */
function judgeJobConditions({ jobConditions }: Book): Fault[] {
  const names = (jobConditions ?? []).map((one) => one?.name);
  return names.flatMap((name, i) => {
    const path = ['labourBook', 'jobConditions', i, 'name'];
    if (name === undefined) return [];
    if (['height', 'congestion', 'storey', 'live'].includes(name))
      return [
        faultAt(path, `${sayValue(name)} is a condition of a level.`, 'Call that of the whole job something else.'),
      ];
    if (names.indexOf(name) === i) return [];
    return [faultAt(path, `${sayValue(name)} stands here twice.`, 'Keep the entry that holds.')];
  });
}

/** A share and a day's hours for the same lost time would count it twice. */
function judgeNonProductive({ nonProductivePercent, nonProductiveDay: day }: Book): Fault[] {
  const faults: Fault[] = [];
  if (day && (nonProductivePercent ?? 0) > 0) {
    const message = `Non-working time is given as ${sayNumber(nonProductivePercent ?? 0)} % and as hours of the day, and would count twice.`;
    faults.push(faultAt(['labourBook', 'nonProductiveDay'], message, 'Keep one of the two.'));
  }
  const { lostHours, dayHours } = day ?? {};
  if (lostHours !== undefined && dayHours !== undefined && lostHours >= dayHours) {
    const message = `Of ${sayNumber(dayHours)} hours a day ${sayNumber(lostHours)} are lost, so that none is worked.`;
    const remedy = 'Let the lost hours be fewer than the hours of the day.';
    faults.push(faultAt(['labourBook', 'nonProductiveDay', 'lostHours'], message, remedy));
  }
  return faults;
}

function judgeCrew({ crew }: Book): Fault[] {
  if (!crew || crew.length === 0 || crew.some((member) => member?.effectiveness !== 0)) return [];
  const message = 'Nobody in the crew has an effectiveness above 0, so no hour of theirs is productive.';
  return [faultAt(['labourBook', 'crew'], message, 'Give the productive part of an hour: 1 for a journeyman.')];
}
