import { formatLength } from '../../../../src/domain/units/format-length.ts';
import { Mark } from '../../../components/mark.tsx';
import { Notice } from '../../../components/notice.tsx';
import { remarkWords } from '../../../words/quality.ts';
import type { JointPageProps } from '../joint.tsx';
import { whole } from '../told-text.ts';

export function JointFacts({ card, joint, neighbours, say }: JointPageProps) {
  const done = card.steps.filter((step) => step.done !== null).length;
  return (
    <div class="facts">
      <p class="row">
        <Mark state={card.state} />
        <span>
          {done} of {card.steps.length} steps
        </span>
        <span>at {formatLength(joint.at, say.units)}</span>
      </p>
      <ul class="plain">
        {neighbours.map(({ mark, state, what, href }) => (
          <li key={mark} class="row">
            {href === null ? mark : <a href={href}>{mark}</a>} {what} <Mark state={state} />
          </li>
        ))}
      </ul>
    </div>
  );
}

export function Uncredited({ card, say }: JointPageProps) {
  return (
    <>
      {card.uncredited.map(({ stamp, step, remarks }) => (
        <Notice
          key={stamp.recordId}
          kind="note"
          text={`Step ${step + 1} by ${stamp.by.name} is kept and not credited. ${remarks.map((remark) => whole(remarkWords(remark, say))).join(' ')}`}
        />
      ))}
    </>
  );
}
