import type { Fault } from '../fault.ts';
import type { Salvaged } from '../parsing/salvaged.ts';
import type { JobDocument } from '../schema/document.ts';
import { judgeBid } from './judge-bid.ts';
import { judgeBuswayTypes } from './judge-busway-types.ts';
import { judgeFeeds } from './judge-feeds.ts';
import { judgeLabels } from './judge-labels.ts';
import { judgeLabourBook } from './judge-labour-book.ts';
import { judgeOrdering } from './judge-ordering.ts';
import { judgeProject } from './judge-project.ts';
import { judgeQuotes } from './judge-quotes.ts';
import { judgeReferences } from './judge-references.ts';
import { judgeRuns } from './judge-runs.ts';
import { judgeTaps } from './judge-taps.ts';

const RULES = [
  judgeProject,
  judgeOrdering,
  judgeLabels,
  judgeReferences,
  judgeBuswayTypes,
  judgeFeeds,
  judgeRuns,
  judgeTaps,
  judgeLabourBook,
  judgeBid,
  judgeQuotes,
] as const;

/** Everything beyond the shape that a document must hold. A rule speaks only where all that it reads is there. */
export function ruleFaults(document: Salvaged<JobDocument>): Fault[] {
  return RULES.flatMap((rule) => rule(document));
}
