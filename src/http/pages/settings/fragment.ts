import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Conflict } from '../../../../views/components/conflict-list.tsx';
import type { FragmentPageProps } from '../../../../views/components/fragment-page.tsx';
import type { Context } from '../../../actions/context.ts';
import type { EntryFault } from '../../../document/form/entries.ts';
import type { UnitSystem } from '../../../domain/model.ts';
import { formToken } from '../../plugins/sessions.ts';
import { type Entered, entered, type FormTrouble } from '../form.ts';
import { sayFault } from '../say-fault.ts';

/** What came back of a form: what was typed, and why it was not taken. */
export interface FragmentTried {
  readonly fields: Entered;
  readonly faults: readonly EntryFault[];
  readonly trouble?: FormTrouble;
}

/** Everything that the form of a level or of a busway type shows beside its own entries. */
export function fragmentProps(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  of: {
    readonly path: string;
    readonly settings: string;
    /** null for a new one. */
    readonly version: number | null;
    readonly tried: FragmentTried | null;
    readonly wordOf: (field: string) => string;
    /** In which lengths of faults are said; millimetres where the form has none. */
    readonly units?: UnitSystem;
    /** As the record stands now, as the texts of the form. */
    readonly now: Entered | null;
    readonly removal: FragmentPageProps['removal'];
  },
) {
  const { path, settings, version, tried, wordOf, now, removal } = of;
  const faults = faultsOf(tried, of.units ?? null);
  return {
    action: path,
    csrf: formToken(reply),
    ...(version === null
      ? { submissionId: entered(request).submissionId ?? context.newId() }
      : { version: versionToSend(entered(request), tried, version) }),
    leaveHref: settings,
    removal,
    faultOf: (name: string) => faults.find((fault) => fault.field === name)?.said,
    summary: faults.map(({ field, said }) => ({ field: idOf(field), label: wordOf(field), message: said })),
    conflicts: tried?.trouble?.refusal.code === 'stale' && now !== null ? conflictsOf(tried.fields, now) : null,
  };
}

/**
 * A form that comes back with a fault stays made from what it was made from: with the version of now it would overwrite what
 * somebody saved meanwhile. Only who has been shown what changed goes on from there.
 */
function versionToSend(fields: Entered, tried: FragmentTried | null, now: number): number {
  const sent = Number(fields.version);
  const isShownChanges = tried?.trouble?.refusal.code === 'stale';
  return tried !== null && !isShownChanges && Number.isInteger(sent) && sent > 0 ? sent : now;
}

function faultsOf(tried: FragmentTried | null, units: UnitSystem | null): EntryFault[] {
  if (tried === null) return [];
  const refused = (tried.trouble?.faults ?? []).map(({ path, message, remedy }) => ({
    field: path,
    said: sayFault({ path, message, remedy }, units),
  }));
  return [...tried.faults, ...refused];
}

/** Entries in which what was typed is not what stands in the record now. */
export function conflictsOf(mine: Entered, theirs: Entered): Conflict[] {
  return Object.entries(theirs).flatMap(([field, text]) => {
    const own = (mine[field] ?? '').replace(/\r\n?/g, '\n').trim();
    return own === text.trim() ? [] : [{ field, mine: own, theirs: text }];
  });
}

function idOf(field: string): string {
  return `f-${field.replace(/[^A-Za-z0-9_-]/g, '-')}`;
}

/** How a length may be typed, in the units of the job. */
export function lengthExample(units: 'ft-in' | 'metric'): string {
  return units === 'ft-in' ? `12'-6 1/2", 12.5 ft or 3810 mm` : `3810, 3.81 m or 12'-6"`;
}
