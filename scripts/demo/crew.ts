import { z } from 'zod';
import type { RecordInput } from '../../src/document/record-schema.ts';
import type { Caller } from './caller.ts';
import type { People } from './people.ts';

type Subject = RecordInput['subject'];
type Body = RecordInput['body'];

const takenSchema = z.object({
  record: z.object({ id: z.string(), outcome: z.string().optional() }),
  stands: z.object({ state: z.string().nullable() }),
});
const refusedSchema = z.object({ title: z.string(), detail: z.string() });

/** Records into the book of one job, each under its maker's own login, and counts them. */
export interface Crew {
  readonly people: People['crew'];
  readonly project: string;
  /** Records and gives the state that follows. */
  readonly record: (who: Caller, subject: Subject, subjectId: string, body: Body) => Promise<string | null>;
  /** Sends a record that must be refused, and gives what is told. */
  readonly refused: (who: Caller, subject: Subject, subjectId: string, body: Body, status: number) => Promise<string>;
  /** Sends one record twice, as a phone does that heard no answer, and expects one record. */
  readonly twice: (who: Caller, subject: Subject, subjectId: string, body: Body) => Promise<void>;
  readonly records: () => number;
}

export function makeCrew(people: People['crew'], project: string): Crew {
  let records = 0;
  let submissions = 0;
  const path = `${project}/inspections`;
  const envelope = (subject: Subject, subjectId: string, body: Body): RecordInput => {
    submissions += 1;
    const submissionId = `demo-${String(submissions).padStart(8, '0')}`;
    return { submissionId, at: new Date().toISOString(), subject, subjectId, body };
  };
  return {
    people,
    project,
    record: async (who, subject, subjectId, body) => {
      const answer = await who.send('POST', path, envelope(subject, subjectId, body), 201);
      records += 1;
      return takenSchema.parse(answer.body).stands.state;
    },
    refused: async (who, subject, subjectId, body, status) => {
      const answer = await who.send('POST', path, envelope(subject, subjectId, body), status);
      const { title, detail } = refusedSchema.parse(answer.body);
      return `${title}: ${detail}`;
    },
    twice: async (who, subject, subjectId, body) => {
      const sent = envelope(subject, subjectId, body);
      const [first, second] = [await who.send('POST', path, sent, 201), await who.send('POST', path, sent, 201)];
      const ids = [first, second].map((answer) => takenSchema.parse(answer.body).record.id);
      if (ids[0] !== ids[1]) throw new Error(`A record sent twice was kept twice: ${ids.join(' and ')}.`);
      records += 1;
    },
    records: () => records,
  };
}
