import type { Fault } from '../fault.ts';
import type { Salvaged } from '../parsing/salvaged.ts';
import { sayValue } from '../parsing/say.ts';
import type { JobDocument } from '../schema/document.ts';
import { faultAt } from './fault-at.ts';

/** A lead time is stated once for a thing, and a rule for spares names a busway type that the job holds. */
export function judgeOrdering({ project, buswayTypes }: Salvaged<JobDocument>): Fault[] {
  const { leadDays, spares } = project?.ordering ?? {};
  const seen = new Set<string>();
  const twice = (leadDays ?? []).flatMap((lead, i) => {
    const item = lead?.item;
    if (item === undefined) return [];
    if (!seen.has(item)) {
      seen.add(item);
      return [];
    }
    const message = `The lead time of ${sayValue(item)} is stated twice.`;
    return [faultAt(['project', 'ordering', 'leadDays', i, 'item'], message, 'Leave one of the two out.')];
  });
  const types = new Set(buswayTypes?.map((type) => type?.id));
  const unknown = (spares ?? []).flatMap((rule, i) => {
    const type = rule?.type;
    if (type === undefined || buswayTypes === undefined || types.has(type)) return [];
    const message = `The job has no busway type ${sayValue(type)}.`;
    return [faultAt(['project', 'ordering', 'spares', i, 'type'], message, 'Name one of its types, or leave it out.')];
  });
  return [...twice, ...unknown];
}
