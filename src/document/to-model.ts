import type { Extra, Job, Level, Project } from '../domain/model.ts';
import { toBid } from './model/to-bid.ts';
import { toBuswayType } from './model/to-busway-type.ts';
import { toLabourBook } from './model/to-labour-book.ts';
import { lengthOrNull } from './model/to-length.ts';
import { toOrdering } from './model/to-ordering.ts';
import { toRun } from './model/to-run.ts';
import type { ExtraDocument } from './schema/bid.ts';
import type { JobDocument } from './schema/document.ts';
import type { LevelDocument } from './schema/level.ts';
import type { ProjectDocument } from './schema/project.ts';

/** A document and what `toModel` made of it. */
export interface Modelled {
  readonly document: JobDocument;
  readonly job: Job;
}

/**
 * The job as the domain sees it: defaults of the contract filled in, every length in 1/80 mm, every absent limit null.
 * The document must have passed `parseJobDocument`. Parts that are the very objects of an `earlier` document keep their
 * model, so that who holds the earlier job can tell by a look what has changed.
 */
export function toModel(document: JobDocument, earlier: Modelled | null = null): Job {
  const { units } = document.project;
  const before = earlier?.document;
  const sameProject = before?.project === document.project;
  const keep = <K extends keyof JobDocument, T>(key: K, model: T | undefined, make: (part: JobDocument[K]) => T): T =>
    model !== undefined && before?.[key] === document[key] ? model : make(document[key]);
  return {
    project: keep('project', earlier?.job.project, toProject),
    levels: keep('levels', earlier?.job.levels, (levels) => levels.map(toLevel)),
    types: keep('buswayTypes', sameProject ? earlier?.job.types : undefined, (types) =>
      types.map((type) => toBuswayType(type, units)),
    ),
    runs: keep('runs', earlier?.job.runs, (runs) => toRuns(runs, earlier)),
    extras: keep('extras', earlier?.job.extras, (extras = []) => extras.map(toExtra)),
    labourBook: keep('labourBook', earlier?.job.labourBook, (book) => (book ? toLabourBook(book) : null)),
    bid: keep('bid', earlier?.job.bid, (bid) => (bid ? toBid(bid) : null)),
  };
}

function toRuns(runs: JobDocument['runs'], earlier: Modelled | null): Job['runs'] {
  const known = new Map(earlier?.document.runs.map((run, i) => [run, earlier.job.runs[i]]));
  return runs.map((run) => known.get(run) ?? toRun(run));
}

function toProject(project: ProjectDocument): Project {
  return {
    number: project.number,
    name: project.name,
    units: project.units,
    currency: project.currency,
    codeBasis: project.codeBasis,
    codeEdition: project.codeEdition ?? null,
    industrial: project.industrial ?? false,
    frequencyHz: project.frequencyHz,
    voltageLL: project.voltageLL,
    voltageLN: project.voltageLN,
    voltageDropLimitPercent: project.voltageDropLimitPercent ?? 3,
    unbalanceLimitPercent: project.unbalanceLimitPercent ?? 10,
    ordering: project.ordering ? toOrdering(project.ordering) : null,
  };
}

function toLevel(level: LevelDocument): Level {
  return {
    id: level.id,
    name: level.name,
    order: level.order,
    elevation: lengthOrNull(level.elevationMm),
    structureHeight: lengthOrNull(level.structureHeightMm),
    conditions: {
      mountingHeight: lengthOrNull(level.conditions?.mountingHeightMm),
      congestion: level.conditions?.congestion ?? 'open',
      liveArea: level.conditions?.liveArea ?? false,
      storeysAboveGrade: level.conditions?.storeysAboveGrade ?? 0,
    },
  };
}

function toExtra(extra: ExtraDocument): Extra {
  return {
    item: extra.item,
    level: extra.level ?? null,
    quantity: extra.quantity,
    unit: extra.unit,
    price: extra.price ?? null,
    hours: extra.hours ?? null,
    note: extra.note ?? null,
  };
}
