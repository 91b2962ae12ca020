import type { JSX } from 'preact';
import { Sign } from '../../components/sign.tsx';

/** What is wrong with an entry, beside it. */
export function FaultText({ id, children }: { id?: string; children: string }): JSX.Element {
  return (
    <div class="fault" id={id}>
      <Sign of="stop" /> {children}
    </div>
  );
}
