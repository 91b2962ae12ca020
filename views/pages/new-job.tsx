import type { JSX } from 'preact';
import { Button, ButtonLink } from '../components/button.tsx';
import { Form } from '../components/form.tsx';
import { ProjectFields, type ProjectFieldsProps } from '../components/project-fields.tsx';

/** An empty job: its heading. Levels, types and runs come after it. */
export function NewJobPage(props: ProjectFieldsProps & { csrf: string; submissionId: string }): JSX.Element {
  return (
    <Form action="/jobs/new" csrf={props.csrf} submissionId={props.submissionId}>
      <ProjectFields {...props} />
      <div class="row">
        <Button kind="lead">Make the job</Button>
        <ButtonLink href="/jobs" kind="plain">
          Leave it
        </ButtonLink>
      </div>
    </Form>
  );
}
