import type { JSX } from 'preact';
import type { Difference } from '../../src/document/compare.ts';
import type { Fault } from '../../src/document/fault.ts';
import { Button, ButtonLink } from '../components/button.tsx';
import { Confirm } from '../components/confirm.tsx';
import { type Conflict, ConflictList } from '../components/conflict-list.tsx';
import { DataTable } from '../components/data-table.tsx';
import { DefinitionList } from '../components/definition-list.tsx';
import { DifferenceList } from '../components/difference-list.tsx';
import { DocumentFaults } from '../components/document-faults.tsx';
import { EmptyState } from '../components/empty-state.tsx';
import type { Entered, FaultOf } from '../components/fault-of.ts';
import { FileField, TextArea } from '../components/field.tsx';
import { Form } from '../components/form.tsx';
import { Part } from '../components/part.tsx';
import { ProjectFields } from '../components/project-fields.tsx';
import { projectEntryWord } from '../words/project-entries.ts';

export interface SettingsPageProps {
  readonly jobId: string;
  readonly csrf: string;
  readonly may: { readonly design: boolean; readonly members: boolean };
  readonly version: number;
  readonly designVersion: number;
  readonly archived: boolean;
  readonly entered: Entered;
  readonly faultOf: FaultOf;
  /** Entries of the heading that somebody else changed meanwhile. */
  readonly conflicts: readonly Conflict[] | null;
  readonly levels: readonly {
    readonly id: string;
    readonly key: string;
    readonly name: string;
    readonly conditions: string;
  }[];
  readonly types: readonly {
    readonly id: string;
    readonly key: string;
    readonly what: string;
    readonly sheet: string;
  }[];
  /** A document that was sent to take the place of the design. */
  readonly replacing: {
    readonly text: string;
    readonly faults: readonly Fault[];
    readonly differences: readonly Difference[] | null;
  };
}

/** Everything that belongs to the job as a whole. */
export function SettingsPage(props: SettingsPageProps): JSX.Element {
  return (
    <>
      <Levels {...props} />
      <Types {...props} />
      <Heading {...props} />
      <JobDocumentPart {...props} />
      {props.may.members && <PutAway {...props} />}
    </>
  );
}

/** At the head of the page: what else belongs to the job. */
export function SettingsTools({ jobId, audit }: { jobId: string; audit: boolean }): JSX.Element {
  return (
    <>
      <ButtonLink href={`/jobs/${jobId}/members`}>Members</ButtonLink>
      {audit && <ButtonLink href={`/jobs/${jobId}/audit`}>Audit trail</ButtonLink>}
    </>
  );
}

const HEADING_WORDS: readonly (readonly [string, string, string])[] = [
  ['number', 'Job number', ''],
  ['name', 'Job', ''],
  ['client', 'Client', ''],
  ['site', 'Site', ''],
  ['units', 'Lengths in', ''],
  ['timeZone', 'Time zone', ''],
  ['codeBasis', 'Code basis', ''],
  ['codeEdition', 'Edition', ''],
  ['frequencyHz', 'Frequency', ' Hz'],
  ['voltageLL', 'Line to line', ' V'],
  ['voltageLN', 'Line to neutral', ' V'],
];

function Heading({ jobId, csrf, may, version, entered, faultOf, conflicts }: SettingsPageProps) {
  if (!may.design) {
    const entries = HEADING_WORDS.filter(([name]) => (entered[name] ?? '') !== '');
    return (
      <Part title="Heading of the job" id="heading">
        <DefinitionList entries={entries.map(([name, term, unit]) => ({ term, value: `${entered[name]}${unit}` }))} />
      </Part>
    );
  }
  return (
    <Part title="Heading of the job" id="heading">
      {conflicts !== null && (
        <ConflictList conflicts={conflicts} theirsHref={`/jobs/${jobId}/settings#heading`} wordOf={projectEntryWord} />
      )}
      <Form action={`/jobs/${jobId}/settings`} csrf={csrf} version={version}>
        <ProjectFields entered={entered} faultOf={faultOf} />
        <Button kind="lead">{conflicts === null ? 'Save the heading' : 'Keep mine: save over theirs'}</Button>
      </Form>
    </Part>
  );
}

function Levels({ jobId, may, levels }: SettingsPageProps) {
  const base = `/jobs/${jobId}/settings/levels`;
  return (
    <Part
      title="Levels"
      id="levels"
      tools={may.design ? <ButtonLink href={`${base}/new`}>Add a level</ButtonLink> : undefined}
    >
      <DataTable
        caption="Levels in order of work"
        rows={levels}
        keyOf={(level) => level.id}
        none={<EmptyState text="No level yet. Runs hang on levels, so add the first one." />}
        columns={[
          {
            head: 'Level',
            kind: 'name',
            cell: (level) => (may.design ? <a href={`${base}/${level.id}`}>{level.key}</a> : level.key),
          },
          { head: 'Name', cell: (level) => level.name },
          { head: 'Conditions of work', cell: (level) => level.conditions },
        ]}
      />
    </Part>
  );
}

function Types({ jobId, may, types }: SettingsPageProps) {
  const base = `/jobs/${jobId}/settings/types`;
  return (
    <Part
      title="Busway types"
      id="types"
      tools={may.design ? <ButtonLink href={`${base}/new`}>Add a busway type</ButtonLink> : undefined}
    >
      <DataTable
        caption="Busway types, from the makers’ sheets as typed in"
        rows={types}
        keyOf={(type) => type.id}
        none={
          <EmptyState text="No busway type yet. Type one in from the maker’s sheet; this program ships no maker’s figures." />
        }
        columns={[
          {
            head: 'Type',
            kind: 'name',
            cell: (type) => (may.design ? <a href={`${base}/${type.id}`}>{type.key}</a> : type.key),
          },
          { head: 'What it is', cell: (type) => type.what },
          { head: 'Sheet', cell: (type) => type.sheet },
        ]}
      />
    </Part>
  );
}

function JobDocumentPart(props: SettingsPageProps) {
  const { jobId, csrf, may, designVersion, replacing } = props;
  const action = `/jobs/${jobId}/settings/document`;
  return (
    <Part
      title="Job document"
      id="document"
      tools={<ButtonLink href={`/jobs/${jobId}/document.json`}>Take a copy (JSON)</ButtonLink>}
    >
      <p>
        The whole design and estimate as one file. Prices, rates and bid are in it for the office alone; records of the
        floor are not in it.
      </p>
      {may.design && (
        <details open={replacing.text !== ''}>
          <summary>Put another document in its place</summary>
          <div class="stack">
            <DocumentFaults faults={replacing.faults} />
            {replacing.differences !== null && <Preview {...props} differences={replacing.differences} />}
            <Form action={action} csrf={csrf} withFiles="yes">
              <FileField name="file" label="Job document" accept=".json,application/json" need="optional" />
              <TextArea
                name="text"
                label="Or its text"
                kind="sheet"
                rows={replacing.text === '' ? 4 : 12}
                value={replacing.text}
                need="optional"
              />
              <input type="hidden" name="version" value={designVersion} />
              <Button name="step" value="preview">
                See what would change
              </Button>
            </Form>
          </div>
        </details>
      )}
    </Part>
  );
}

function Preview({
  jobId,
  csrf,
  designVersion,
  replacing,
  differences,
}: SettingsPageProps & { readonly differences: readonly Difference[] }) {
  return (
    <section class="stack" aria-label="What would change">
      <DifferenceList differences={differences} />
      {differences.length > 0 && (
        <Form action={`/jobs/${jobId}/settings/document`} csrf={csrf} version={designVersion}>
          <input type="hidden" name="text" value={replacing.text} />
          <p>
            Nothing is written yet. Whatever keeps its label keeps its identity and its records; released runs keep
            their pieces until they are released again.
          </p>
          <Button kind="lead" name="step" value="replace">
            Put it in place
          </Button>
        </Form>
      )}
    </section>
  );
}

function PutAway({ jobId, csrf, archived, version }: SettingsPageProps) {
  const action = `/jobs/${jobId}/settings/archived`;
  return (
    <Part title={archived ? 'This job is put away' : 'Put the job away'} id="archived">
      {archived ? (
        <Form action={action} csrf={csrf} version={version}>
          <Button name="archived" value="no">
            Bring it back
          </Button>
        </Form>
      ) : (
        <Confirm
          ask="Put the job away"
          question="It leaves the list of jobs in work. Nothing is deleted, everything stays readable, and it can be brought back here."
          answer="Put it away"
          action={action}
          csrf={csrf}
          version={version}
        >
          <input type="hidden" name="archived" value="yes" />
        </Confirm>
      )}
    </Part>
  );
}
