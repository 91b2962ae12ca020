import type { TypedRunProps } from '../../../../views/pages/run-edit/drawn-run.tsx';
import { ROW_GROUPS } from '../../../document/run-form/entries.ts';
import type { TypedDrawing } from './draw-typed.ts';

/** What the drawing says; its cost for the office alone. */
export function drawingProps(typed: TypedDrawing): TypedRunProps {
  const { drawn, mayMoney, faults, tapFaults, notes, project, pasted } = typed;
  return {
    units: project.units,
    drawn,
    cost: mayMoney && drawn !== null ? { minor: drawn.layout.cost?.total ?? null, currency: project.currency } : null,
    faults,
    notes,
    tapFaults,
    pasteFaults: ROW_GROUPS.flatMap((group) => (pasted.faults[group] ?? []).map((fault) => ({ ...fault, group }))),
    filled: pasted.filled,
  };
}
