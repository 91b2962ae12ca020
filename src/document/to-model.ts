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

/**
 * The job as the domain sees it: defaults of the contract filled in, every length in 1/80 mm, every absent limit null.
 * The document must have passed `parseJobDocument`.
 */
export function toModel(document: JobDocument): Job {
  const { units } = document.project;
  return {
    project: toProject(document.project),
    levels: document.levels.map(toLevel),
    types: document.buswayTypes.map((type) => toBuswayType(type, units)),
    runs: document.runs.map(toRun),
    extras: (document.extras ?? []).map(toExtra),
    labourBook: document.labourBook ? toLabourBook(document.labourBook) : null,
    bid: document.bid ? toBid(document.bid) : null,
  };
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
