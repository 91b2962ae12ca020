import type { JSX } from 'preact';
import { Part } from '../components/part.tsx';

export interface ApiField {
  readonly name: string;
  readonly needed: boolean;
  readonly type: string;
  /** A named shape, described at its own place. */
  readonly shape: string | null;
  readonly about: string;
  readonly fields: readonly ApiField[];
}

export interface ApiBody {
  readonly type: string;
  readonly shape: string | null;
  readonly fields: readonly ApiField[];
}

export interface ApiOperation {
  readonly method: string;
  readonly path: string;
  readonly summary: string;
  readonly description: string;
  readonly parameters: readonly {
    readonly name: string;
    readonly where: string;
    readonly needed: boolean;
    readonly type: string;
    readonly about: string;
  }[];
  readonly body: ApiBody | null;
  readonly answers: readonly (ApiBody & { readonly status: string })[];
}

export interface ApiGroup {
  readonly name: string;
  readonly operations: readonly ApiOperation[];
}

export interface ApiShape {
  readonly name: string;
  readonly about: string;
  readonly fields: readonly ApiField[];
}

export interface ApiDocsPageProps {
  readonly about: string;
  readonly groups: readonly ApiGroup[];
  readonly shapes: readonly ApiShape[];
}

/** The API in words, made from the same description that programs read. */
export function ApiDocsPage({ about, groups, shapes }: ApiDocsPageProps): JSX.Element {
  return (
    <>
      <p>{about}</p>
      <p>
        For programs: <a href="/api/v1/openapi.json">OpenAPI 3.1</a>,{' '}
        <a href="/api/v1/job-document.schema.json">JSON Schema of the job document</a>. A token is made under{' '}
        <a href="/me#tokens">your name</a> and sent as <code>Authorization: Bearer …</code>.
      </p>
      <p>
        A refusal answers as <a href="#shape-Problem">Problem</a>: 401 signed out, 403 not yours to do, 404 not found,
        409 taken or in use, 412 changed meanwhile, 422 faulty fields all at once, 428 without <code>If-Match</code>.
      </p>
      <nav aria-label="Subjects of the API">
        <ul class="legend">
          {groups.map((group) => (
            <li key={group.name}>
              <a href={`#${idOf(group.name)}`}>{group.name}</a>
            </li>
          ))}
          <li>
            <a href="#shapes">Shapes</a>
          </li>
        </ul>
      </nav>
      {groups.map((group) => (
        <Part key={group.name} title={group.name} id={idOf(group.name)}>
          {group.operations.map((operation) => (
            <OperationText key={`${operation.method} ${operation.path}`} operation={operation} />
          ))}
        </Part>
      ))}
      <Part title="Shapes" id="shapes">
        {shapes.map((shape) => (
          <details key={shape.name} id={`shape-${shape.name}`}>
            <summary>{shape.name}</summary>
            {shape.about !== '' && <p>{shape.about}</p>}
            <Fields fields={shape.fields} />
          </details>
        ))}
      </Part>
    </>
  );
}

function OperationText({ operation }: { operation: ApiOperation }) {
  const { method, path, summary, description, parameters, body, answers } = operation;
  return (
    <details class="operation">
      <summary>
        <code>
          <strong>{method}</strong> {path}
        </code>{' '}
        <span class="soft">{summary}</span>
      </summary>
      <div class="stack">
        {description !== '' && <p>{description}</p>}
        {parameters.length > 0 && (
          <>
            <h3>Parameters</h3>
            <dl class="pairs">
              {parameters.map((one) => (
                <>
                  <dt>
                    <code>{one.name}</code> <span class="soft">{one.where}</span>
                  </dt>
                  <dd>
                    {one.type}
                    {one.needed ? ', needed' : ''}. {one.about}
                  </dd>
                </>
              ))}
            </dl>
          </>
        )}
        {body !== null && (
          <>
            <h3>Body</h3>
            <BodyText body={body} />
          </>
        )}
        {answers.map((answer) => (
          <>
            <h3>Answer {answer.status}</h3>
            <BodyText body={answer} />
          </>
        ))}
      </div>
    </details>
  );
}

function BodyText({ body }: { body: ApiBody }) {
  return (
    <>
      <p>
        <TypeText type={body.type} shape={body.shape} />
      </p>
      <Fields fields={body.fields} />
    </>
  );
}

function Fields({ fields }: { fields: readonly ApiField[] }) {
  if (fields.length === 0) return null;
  return (
    <ul class="schema">
      {fields.map((field) => (
        <li key={field.name}>
          <code>{field.name}</code>
          {!field.needed && <span class="soft"> (may be left out)</span>}:{' '}
          <TypeText type={field.type} shape={field.shape} />
          {field.about !== '' && <span class="soft">. {field.about}</span>}
          <Fields fields={field.fields} />
        </li>
      ))}
    </ul>
  );
}

function TypeText({ type, shape }: { type: string; shape: string | null }) {
  return shape === null ? <span>{type}</span> : <a href={`#shape-${shape}`}>{type}</a>;
}

function idOf(name: string): string {
  return `tag-${name.toLowerCase().replace(/[^a-z0-9]+/g, '-')}`;
}
