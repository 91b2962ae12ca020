import { z } from 'zod';
import { refusalWords, remarkWords, type Speech, type Told } from '../../../../views/words/quality.ts';
import type { Act, Card } from '../../../actions/cards.ts';
import { recordViewSchema } from '../../../actions/records/record-view.ts';
import type { SubjectAt } from '../../../actions/records/subject-at.ts';
import type { Neighbour } from '../../../domain/quality/decide-joint.ts';
import type { Stamp } from '../../../domain/quality/record.ts';
import type { Remark } from '../../../domain/quality/remark.ts';
import { PIECE_STATES } from '../../../domain/quality/states.ts';

/** What the cards of the floor have in common. */
export const toldSchema = z.object({
  code: z.string().describe('Stable.'),
  what: z.string(),
  number: z.string().nullable(),
  remedy: z.string(),
});

export const stampSchema = z.object({
  by: z.object({ id: z.string(), name: z.string() }),
  at: z.string(),
  recordId: z.string(),
});

export const neighbourSchema = z.object({
  mark: z.string(),
  state: z.enum(PIECE_STATES),
  quarantineReason: z.string().nullable(),
});

export const actSchema = z.object({
  kind: z.string().describe('Kind of record.'),
  step: z.number().int().nullable().describe('Of a joint, from 0.'),
  end: z.enum(['near', 'far']).nullable().describe('Of a run.'),
  bar: toldSchema.nullable().describe('Why you cannot record it now; null when you can.'),
});

export const cardShared = {
  revision: z.number().int().describe("Of the run's release."),
  changed: z.boolean().describe('The design of the run has moved on since the release.'),
  acts: z.array(actSchema).describe('What may be recorded here, and what bars you from it now.'),
  history: z.array(recordViewSchema).describe('Every record, in the order of the book; superseded ones too.'),
};

type Shown = Pick<Card<SubjectAt['subject']>, 'at' | 'acts' | 'history'>;

export function shared({ at, acts, history }: Shown) {
  const say = speechOf(at);
  const { revision, changed } = at.floor;
  return { revision, changed, acts: acts.map((act) => actTold(act, say)), history: [...history] };
}

export function speechOf({ floor }: SubjectAt): Speech {
  const { units, timeZone } = floor.project.document;
  return { units, zone: timeZone ?? null };
}

function actTold({ bar, ...act }: Act, say: Speech) {
  return { ...act, bar: bar === null ? null : { code: bar.code, ...barWords(bar, say) } };
}

function barWords(bar: NonNullable<Act['bar']>, say: Speech): Told {
  if (bar.code !== 'capability') return refusalWords(bar, say);
  return {
    what: `Your role in this job does not include "${bar.needs}".`,
    number: null,
    remedy: 'Ask the office, or somebody whose role has it.',
  };
}

export function remarkTold(remark: Remark, say: Speech) {
  return { code: remark.code, ...remarkWords(remark, say) };
}

export function stampOf(stamp: Stamp | null) {
  return stamp === null ? null : { by: stamp.by, at: stamp.at, recordId: stamp.recordId };
}

export function neighbourOf({ mark, state, quarantineReason }: Neighbour) {
  return { mark, state, quarantineReason };
}
