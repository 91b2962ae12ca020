import { sayIn } from '../../../src/domain/layout/say.ts';
import { PlaceDrawing } from '../../drawings/place-drawing.tsx';
import { briefWords, sumWords, type Way, wayWords } from '../../words/substitution.ts';
import { RevisionChanges } from '../revisions/revision-changes.tsx';
import type { SubstitutionPageProps } from '../substitution.tsx';

/** What one way does to the run: the place drawn, and thing by thing. */
export function OneWay(props: SubstitutionPageProps & { readonly way: Way & { readonly value: string } }) {
  const { way, units, piece, joints, supports, layout, zones, open } = props;
  const say = sayIn(units);
  const { from, to } = piece.placed;
  const words = wayWords(way, { from, to, joints, supports }, say);
  const isIn = (one: { readonly from: number; readonly to: number }) => one.from >= from && one.to <= to;
  const was = new Map(way.moves.map((move) => [move.id, move.from]));
  return (
    <details open={way === open[0]}>
      <summary>
        <strong>{sumWords(way.lengths, say)}</strong>: {briefWords(way)}
      </summary>
      <div class="stack">
        <PlaceDrawing
          units={units}
          label={`${sumWords(way.lengths, say)} in place of ${piece.mark}`}
          from={from}
          to={to}
          sections={way.layout.pieces
            .filter((one) => one.to > from - (to - from) && one.from < to + (to - from))
            .map((one) => ({ from: one.from, to: one.to, isNew: isIn(one) }))}
          joints={way.layout.joints.map(({ at }) => ({ at, isNew: at > from && at < to }))}
          supports={[
            ...way.hangers.removed.map((at) => ({ at, fate: 'goes' as const })),
            ...way.layout.supports.map(({ at }) => ({
              at,
              fate: way.hangers.added.includes(at) ? ('comes' as const) : ('stays' as const),
            })),
          ]}
          taps={way.layout.taps.map(({ id, at }) => ({ id, at, was: was.get(id) ?? null }))}
          zones={zones}
        />
        <ul>
          {words.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
        {way.layout.length !== layout.length && <p>The run would end at {say(way.layout.length)}.</p>}
        <details>
          <summary>Everything that differs</summary>
          <RevisionChanges difference={way.difference} units={units} />
        </details>
      </div>
    </details>
  );
}
