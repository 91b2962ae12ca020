import type { JSX } from 'preact';
import { Button } from '../components/button.tsx';
import { TextField } from '../components/field.tsx';
import { Form } from '../components/form.tsx';

type FaultOf = (name: string) => string | undefined;
const fault = (faultOf: FaultOf, name: string) => {
  const text = faultOf(name);
  return text === undefined ? {} : { fault: text };
};

export function SignInPage(props: { csrf: string; next: string; email: string }): JSX.Element {
  return (
    <Form action="/sign-in" csrf={props.csrf}>
      <input type="hidden" name="next" value={props.next} />
      <TextField
        name="email"
        label="E-mail address"
        kind="email"
        value={props.email}
        autocomplete="username"
        need="required"
      />
      <TextField name="password" label="Password" kind="password" autocomplete="current-password" need="required" />
      <Button kind="lead">Sign in</Button>
      <p class="soft">No account, or the password is lost? An administrator makes a one-time link for you.</p>
    </Form>
  );
}

export function FirstAccountPage(props: {
  csrf: string;
  secret: string;
  entered: Readonly<Record<string, string>>;
  faultOf: FaultOf;
}): JSX.Element {
  return (
    <Form action={`/first-account/${encodeURIComponent(props.secret)}`} csrf={props.csrf}>
      <p>This is the first account of this job book. It is an administrator: it makes the others.</p>
      <TextField
        name="name"
        label="Your name"
        value={props.entered.name ?? ''}
        autocomplete="name"
        need="required"
        {...fault(props.faultOf, 'name')}
      />
      <TextField
        name="email"
        label="E-mail address"
        kind="email"
        value={props.entered.email ?? ''}
        autocomplete="username"
        need="required"
        {...fault(props.faultOf, 'email')}
      />
      <TextField
        name="password"
        label="Password"
        kind="password"
        autocomplete="new-password"
        need="required"
        hint="At least 10 characters; a few words are easier to remember than signs."
        {...fault(props.faultOf, 'password')}
      />
      <Button kind="lead">Make the account</Button>
    </Form>
  );
}

export function InvitationPage(props: { csrf: string; secret: string; faultOf: FaultOf }): JSX.Element {
  return (
    <Form action={`/invitation/${encodeURIComponent(props.secret)}`} csrf={props.csrf}>
      <TextField
        name="password"
        label="New password"
        kind="password"
        autocomplete="new-password"
        need="required"
        hint="At least 10 characters; a few words are easier to remember than signs."
        {...fault(props.faultOf, 'password')}
      />
      <Button kind="lead">Set the password</Button>
    </Form>
  );
}
