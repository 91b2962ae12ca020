import type { Side, Turn } from '../model.ts';
import type { ElbowHand, TeeHand } from './result.ts';

/**
 * Which elbow a turn needs: towards the conductor side the conductors lie inside the bend, away from it outside;
 * a riser's elbow has its slot outside (turning up, away from the slot) or inside (turning down).
 * An elbow stays the elbow it is when the run is walked the other way. `elbowHand('left', 'left')` is `'inside'`.
 */
export function elbowHand(turn: Exclude<Turn, 'none'>, conductorSide: Side): ElbowHand {
  switch (turn) {
    case 'left':
    case 'right':
      return turn === conductorSide ? 'inside' : 'outside';
    case 'up':
      return 'slot-outside';
    case 'down':
      return 'slot-inside';
  }
}

/**
 * Which of the four tees: near when the branch leaves on the parent's conductor side, then the branch's own conductor side
 * looking away from the tee. `teeHand('left', 'left', 'right')` is `'near-right'`.
 */
export function teeHand(parentSide: Side, branchLeaves: Side, branchConductorSide: Side): TeeHand {
  const reach = branchLeaves === parentSide ? 'near' : 'far';
  return `${reach}-${branchConductorSide}`;
}
