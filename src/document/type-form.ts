import { DISTANCE, SIZE } from '../domain/units/parse-length.ts';
import { type Entered, type EntryOf, length, money, number, text, tick, weight } from './form/entries.ts';
import { readFragment, writeFragment } from './form/fragment-form.ts';
import { type Draft, type EntryLog, newLog, put, readEntry } from './form/read-entry.ts';
import type { BuswayTypeDocument, ProjectDocument } from './job-document.ts';

const ENTRIES: readonly EntryOf[] = [
  text('id'),
  text('sheet.document'),
  text('sheet.revision'),
  text('sheet.date'),
  number('ratedCurrentA'),
  number('ratedVoltageV'),
  number('poles'),
  text('neutral'),
  tick('hundredPercentRated'),
  number('phaseOhmPerKm.r'),
  number('phaseOhmPerKm.x'),
  number('neutralOhmPerKm.r'),
  number('neutralOhmPerKm.x'),
  number('shortCircuitKA'),
  number('shortCircuitCycles'),
  { path: 'weightKgPerM', reading: { kind: 'weight-per-length' } },
  { path: 'stockLengthsMm', reading: { kind: 'lengths', range: SIZE } },
  length('factoryCut.minMm', SIZE),
  length('factoryCut.maxMm', SIZE),
  length('factoryCut.stepMm', SIZE),
  tick('feed.joins'),
  weight('feed.weightKg'),
  length('support.maxSpacingMm', SIZE),
  length('support.maxEndOverhangMm', DISTANCE),
  length('support.jointClearMm', DISTANCE),
  length('support.stepMm', SIZE),
  length('support.fittingWithinMm', DISTANCE),
  text('support.source'),
  length('tap.jointClearMm', DISTANCE),
  length('tap.endClearMm', DISTANCE),
  length('tap.minSpacingMm', DISTANCE),
  length('tap.boxLengthMm', SIZE),
  length('tap.boxDepthMm', SIZE),
  length('tap.boxHeightMm', SIZE),
  length('tap.faceClearMm', DISTANCE),
  length('crossing.jointClearMm', DISTANCE),
  length('crossing.supportClearMm', DISTANCE),
  number('joint.clamps'),
  number('joint.contactSets'),
  number('joint.bolts'),
  { path: 'joint.torqueNm', reading: { kind: 'torque' } },
  { path: 'joint.steps', reading: { kind: 'lines' } },
  length('fittings.elbow.legMm', SIZE),
  weight('fittings.elbow.weightKg'),
  tick('fittings.elbow.handed'),
  length('fittings.tee.legMm', SIZE),
  weight('fittings.tee.weightKg'),
  tick('fittings.tee.handed'),
  text('words.clamp'),
  text('words.contactSet'),
  text('words.seatingTool'),
  money('prices.sectionPerM'),
  money('prices.cutSurcharge'),
  money('prices.jointKit'),
  money('prices.elbow'),
  money('prices.tee'),
  money('prices.endFeed'),
  money('prices.endCap'),
  money('prices.support'),
  money('prices.tap'),
  money('prices.drop'),
];
const PRICE_ENTRIES: readonly EntryOf[] = [length('lengthMm', SIZE), money('price')];

type Project = Pick<ProjectDocument, 'units' | 'currency'>;

export function writeTypeForm(type: BuswayTypeDocument, project: Project): Entered {
  const prices = (type.prices?.sections ?? []).flatMap((row, index) =>
    Object.entries(writeFragment(row, PRICE_ENTRIES, project)).map(([path, said]) => [rowName(index, path), said]),
  );
  return {
    ...writeFragment(type, ENTRIES, project),
    ...Object.fromEntries(FITTINGS.map((name) => [`fittings.${name}.handed`, isHanded(type, name) ? 'yes' : ''])),
    ...Object.fromEntries(prices),
  };
}

const FITTINGS = ['elbow', 'tee'] as const;

/** Fittings have hands unless the sheet says otherwise; one that is not there yet is offered with them. */
function isHanded(type: BuswayTypeDocument, name: (typeof FITTINGS)[number]): boolean {
  return type.fittings?.[name]?.handed ?? true;
}

/** A busway type as typed from its sheet, for the job document's own check. */
export function readTypeForm(
  entered: Entered,
  project: Project,
  before: BuswayTypeDocument | null,
): Pick<EntryLog, 'faults' | 'questions'> & { readonly type: BuswayTypeDocument } {
  const log = newLog(project);
  const draft = readFragment(entered, ENTRIES, before, log);
  draft.factoryCut ??= null;
  settleFittings(draft, before);
  const sections = readPrices(entered, log);
  if (sections.length > 0) draft.prices = { sections, ...(draft.prices as object | undefined) };
  return { type: draft as unknown as BuswayTypeDocument, faults: log.faults, questions: log.questions };
}

/**
 * A fitting of which neither leg nor weight is given is none: its tick alone says nothing. One that is not ticked has no hands,
 * and the tick of one whose hands were never written stays unwritten.
 */
function settleFittings(draft: Draft, before: BuswayTypeDocument | null): void {
  const typed = (draft.fittings ?? {}) as Record<string, { legMm?: number; weightKg?: number; handed?: boolean }>;
  const kept = FITTINGS.flatMap((name) => {
    const { handed, ...fitting } = typed[name] ?? {};
    if (fitting.legMm === undefined && fitting.weightKg === undefined) return [];
    const old = before?.fittings?.[name];
    const isUnwritten = handed === true && old !== undefined && old.handed === undefined;
    return [[name, isUnwritten ? fitting : { ...fitting, handed: handed === true }] as const];
  });
  if (kept.length === 0) delete draft.fittings;
  else draft.fittings = Object.fromEntries(kept);
}

const MOST_ROWS = 100;

/** Rows in which anything was typed, whichever they are. */
function readPrices(entered: Entered, log: EntryLog): Draft[] {
  return Array.from({ length: MOST_ROWS }, (_, row) => row).flatMap((row) => {
    const isEmpty = PRICE_ENTRIES.every((entry) => (entered[rowName(row, entry.path)] ?? '').trim() === '');
    if (isEmpty) return [];
    const draft: Draft = {};
    for (const entry of PRICE_ENTRIES) put(draft, entry.path, readEntry(entry, rowName(row, entry.path), entered, log));
    return [draft];
  });
}

/** `rowName(0, 'price') = 'sectionPrices[0].price'`. */
function rowName(row: number, path: string): string {
  return `sectionPrices[${row}].${path}`;
}
