import { formatLength } from '../../../../src/domain/units/format-length.ts';
import { DefinitionList } from '../../../components/definition-list.tsx';
import { Mark } from '../../../components/mark.tsx';
import { Time } from '../../../components/time.tsx';
import type { TapOffPageProps } from '../tap-off.tsx';

export function TapOffFacts({ tap, piece, card, say }: TapOffPageProps) {
  const { units } = say;
  return (
    <div class="facts">
      <p class="row">
        <Mark state={tap.state} />
        <strong>at {formatLength(tap.at, units)}</strong>
      </p>
      <p class="large">
        <strong>
          {tap.phases}
          {tap.neutral && '-N'}, {tap.deviceA} A
        </strong>
      </p>
      <DefinitionList
        entries={[
          ...(tap.serves === null ? [] : [{ term: 'Serves', value: tap.serves }]),
          { term: 'Faces', value: tap.faces === null ? `${tap.side}, seen from the feed` : tap.faces.toUpperCase() },
          {
            term: 'On piece',
            value: (
              <span class="row">
                {piece.href === null ? piece.mark : <a href={piece.href}>{piece.mark}</a>} <Mark state={piece.state} />
              </span>
            ),
          },
          { term: 'Drop', value: tap.drop === null ? 'none planned' : formatLength(tap.drop, units) },
          ...(card.set === null
            ? []
            : [
                {
                  term: 'Set',
                  value: (
                    <>
                      {card.set.by.name}, <Time at={new Date(card.set.at)} zone={say.zone} />
                    </>
                  ),
                },
              ]),
          ...(card.checked === null
            ? []
            : [
                {
                  term: 'Checked',
                  value: (
                    <>
                      {card.checked.by.name}, <Time at={new Date(card.checked.at)} zone={say.zone} />
                    </>
                  ),
                },
              ]),
        ]}
      />
    </div>
  );
}
