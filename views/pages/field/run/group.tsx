import type { ComponentChildren, JSX } from 'preact';

export type GroupOf = 'hangers' | 'pieces' | 'joints' | 'ends' | 'taps' | 'tests';

const TITLES: Readonly<Record<GroupOf, { readonly title: string; readonly done: string }>> = {
  hangers: { title: 'Hangers', done: 'set' },
  pieces: { title: 'Pieces', done: 'hung' },
  joints: { title: 'Joints', done: 'accepted' },
  ends: { title: 'Ends and slot', done: 'closed' },
  taps: { title: 'Tap-offs', done: 'checked' },
  tests: { title: 'Tests', done: 'passed' },
};

/** Things of one sort, folded to a line but for those whose turn it is. */
export function Group(props: {
  readonly of: GroupOf;
  readonly count: { readonly done: number; readonly of: number };
  readonly open: 'yes' | 'no';
  readonly children: ComponentChildren;
}): JSX.Element {
  const { of, count, open, children } = props;
  const { title, done } = TITLES[of];
  return (
    <details class="group" id={of} open={open === 'yes'}>
      <summary>
        <h2>{title}</h2> <span>{count.of === 0 ? 'none' : `${count.done} of ${count.of} ${done}`}</span>
      </summary>
      {children}
    </details>
  );
}
