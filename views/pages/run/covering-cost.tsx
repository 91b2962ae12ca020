import type { JSX } from 'preact';
import type { RunLayout } from '../../../src/domain/layout/result.ts';
import type { Run } from '../../../src/domain/model.ts';
import { formatMoney } from '../../../src/domain/units/money.ts';
import { EmptyState } from '../../components/empty-state.tsx';
import { Part } from '../../components/part.tsx';
import { Working } from '../../components/working.tsx';

/** What the covering costs, and so why it won over the others: for the office alone. */
export function CoveringCostPart(props: {
  readonly layout: Pick<RunLayout, 'cost'>;
  readonly run: Pick<Run, 'fieldHold'>;
  readonly currency: string;
  readonly type: { readonly id: string };
}): JSX.Element {
  const { layout, currency, type } = props;
  const { cost } = layout;
  const money = (minor: number) => formatMoney(Math.round(minor), currency);
  return (
    <Part title="Cost of the covering" id="cost">
      {cost === null ? (
        <EmptyState text="No covering, so no cost: see the checks." />
      ) : (
        <>
          <p>
            {props.run.fieldHold === null
              ? 'Of all coverings that hold the rules, this one costs least.'
              : 'This run is kept to what the floor substituted: nothing is said of what costs least.'}{' '}
            The cost weighs joints against pieces and is no price.
          </p>
          <Working
            figure={money(cost.total)}
            of="the cost of the covering"
            formula="cost = pieces + cut surcharges + joint kits + joint labour"
            filledIn={`${money(cost.total)} = ${money(cost.pieces)} + ${money(cost.cuts)} + ${money(cost.jointKit)} + ${money(cost.jointLabour)}`}
            inputs={[
              { name: 'pieces', value: money(cost.pieces), source: `prices of type ${type.id}, fittings included` },
              { name: 'cut surcharges', value: money(cost.cuts), source: `prices of type ${type.id}` },
              { name: 'joints', value: String(cost.joints), source: 'layout' },
              { name: 'joint kits', value: money(cost.jointKit), source: `prices of type ${type.id}` },
              {
                name: 'joint labour',
                value: money(cost.jointLabour),
                source: 'likely hours of a joint at the crew’s cost of a productive hour, without condition factors',
              },
            ]}
            source="An absent price counts nought, with a note among the checks. Ties: fewer joints, then no cut, then longer pieces nearer the feed."
          />
        </>
      )}
    </Part>
  );
}
