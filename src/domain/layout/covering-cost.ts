import type { Prices } from '../model.ts';
import type { CoveringCost, PlacedPiece } from './result.ts';
import { sectionPrice } from './section-shop.ts';

/** The reckoning of a covering as it stands, fittings included; an absent price counts 0 (a note of the run says so). */
export function coveringCost(
  pieces: readonly PlacedPiece[],
  joints: number,
  prices: Prices,
  labourEach: number,
): CoveringCost {
  const bought = pieces.reduce((sum, piece) => sum + piecePrice(piece, prices), 0);
  const cuts = pieces.filter((piece) => piece.kind === 'cut').length * (prices.cutSurcharge ?? 0);
  const jointKit = joints * (prices.jointKit ?? 0);
  const jointLabour = joints * labourEach;
  return { pieces: bought, cuts, joints, jointKit, jointLabour, total: bought + cuts + jointKit + jointLabour };
}

function piecePrice(piece: PlacedPiece, prices: Prices): number {
  switch (piece.kind) {
    case 'stock':
    case 'cut':
      return sectionPrice(prices, piece.to - piece.from);
    case 'elbow':
      return prices.elbow ?? 0;
    case 'tee':
      return prices.tee ?? 0;
  }
}
