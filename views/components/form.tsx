import type { ComponentChildren, JSX } from 'preact';

export interface FormProps {
  readonly action: string;
  readonly csrf: string;
  /** One for each time the form is shown: the same one sent twice makes one record. */
  readonly submissionId?: string;
  /** Version of what is changed; a stale one is refused with both values shown. */
  readonly version?: number;
  /** A record of the floor: kept on the phone and sent again when there is no signal (`assets/field.js`). */
  readonly keep?: { readonly label: string };
  /** Files are sent along. */
  readonly withFiles?: 'yes';
  readonly id?: string;
  readonly children: ComponentChildren;
}

/** A form that posts, with everything a post must carry. htmx attributes go on the parts inside, or leave them out. */
export function Form({ action, csrf, submissionId, version, keep, withFiles, id, children }: FormProps): JSX.Element {
  return (
    <form
      id={id}
      class={keep ? 'form keep' : 'form'}
      method="post"
      action={action}
      enctype={withFiles ? 'multipart/form-data' : undefined}
      data-keep-label={keep?.label}
    >
      <input type="hidden" name="_csrf" value={csrf} />
      {submissionId !== undefined && <input type="hidden" name="submissionId" value={submissionId} />}
      {version !== undefined && <input type="hidden" name="version" value={version} />}
      {children}
    </form>
  );
}
