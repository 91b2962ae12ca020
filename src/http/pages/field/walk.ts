import { createHash } from 'node:crypto';
import type { FastifyRequest } from 'fastify';
import type { WalkOf } from '../../../../views/pages/field/run/walk-form.tsx';
import type { Context } from '../../../actions/context.ts';
import { takeFieldRecord } from '../../../actions/field-records.ts';
import type { RecordInput } from '../../../document/record-schema.ts';
import type { Subject } from '../../../domain/quality/record.ts';
import { viewerOf } from '../../plugins/viewer.ts';
import { type FieldEntries, MOST_NOTE } from './entries.ts';
import { heldMsOf, type PageTrouble, refused, unread } from './take-record.ts';

export type Walked =
  | { readonly ok: true; readonly count: number }
  | { readonly ok: false; readonly trouble: PageTrouble };

const MOST_THINGS = 200;

/**
 * Puts what was ticked on a walk into the book, one record a thing. What is refused is told with its mark and stays ticked;
 * what was taken before it stays taken, and sent again is found there.
 */
export async function takeWalk(
  context: Context,
  request: FastifyRequest,
  jobId: string,
  entries: FieldEntries,
  walk: { readonly does: WalkOf; readonly markOf: (id: string) => string },
): Promise<Walked> {
  const { does, markOf } = walk;
  const things = thingsOf(entries);
  if (things.length === 0) entries.fault('things', 'Tick what you saw; nothing is ticked yet.');
  if (things.length > MOST_THINGS) entries.fault('things', `${things.length} at once are too many; ${MOST_THINGS} go.`);
  const body = bodyOf(does, entries);
  if (entries.faults.size > 0) return { ok: false, trouble: unread(request, entries, does) };
  const troubles: { readonly mark: string; readonly trouble: PageTrouble }[] = [];
  for (const { id, version } of things) {
    try {
      await takeFieldRecord(context, viewerOf(request), jobId, {
        subject: SUBJECT[does],
        subjectId: id,
        body,
        submissionId: ownId(entries.text('submissionId'), id),
        seenVersion: version,
        supersedes: null,
        heldMs: heldMsOf(entries),
      });
    } catch (error) {
      troubles.push({ mark: markOf(id), trouble: refused(request, error, { form: does }) });
    }
  }
  const [first] = troubles;
  if (first === undefined) return { ok: true, count: things.length };
  const taken = things.length - troubles.length;
  const words = troubles.map(({ mark, trouble }) => `${mark}: ${trouble.notice}`).join(' ');
  return {
    ok: false,
    trouble: {
      ...first.trouble,
      notice: `${taken === 0 ? 'None' : `${taken} of ${things.length}`} recorded. ${words}`,
      faultOf: (name) => (name === 'things' ? words : undefined),
    },
  };
}

const SUBJECT: Readonly<Record<WalkOf, Subject>> = {
  hangers: 'support',
  'accept-hangers': 'support',
  pieces: 'piece',
  taps: 'tap',
};

function bodyOf(does: WalkOf, entries: FieldEntries): RecordInput['body'] {
  switch (does) {
    case 'hangers':
      return {
        kind: 'support-set',
        measuredMm: null,
        rodPlumb: entries.ticked('rodPlumb'),
        loadNut: entries.ticked('loadNut'),
        lockNut: entries.ticked('lockNut'),
        note: entries.optional('note', MOST_NOTE),
      };
    case 'accept-hangers':
      return { kind: 'support-accepted', note: null };
    case 'pieces':
      return { kind: 'piece-on-site', lot: entries.optional('lot') };
    case 'taps':
      return { kind: 'tap-on-site', lot: entries.optional('lot') };
  }
}

/** "id version" as the form sends it. */
function thingsOf(entries: FieldEntries): { readonly id: string; readonly version: number | null }[] {
  return entries.all('things').flatMap((tick) => {
    const [, id, version] = /^([A-Za-z0-9_-]{1,64}) (\d{1,9})$/.exec(tick) ?? [];
    return id === undefined ? [] : [{ id, version: Number(version) }];
  });
}

/** One submission id for each thing of the form, always the same for the same form and thing. */
function ownId(submissionId: string, thingId: string): string {
  return createHash('sha256').update(`${submissionId} ${thingId}`).digest('base64url');
}
