import { sayIn } from '../layout/say.ts';
import { damagedAt, isSamePieces, type SubstitutionSite } from './site.ts';
import type { Substitutes } from './substitutes.ts';

/** Where nothing can be chosen: why, and what would do. A sentence or two; null where something can. */
export function whatWouldFill(site: SubstitutionSite, found: Substitutes): string | null {
  if (found.open.length > 0) return null;
  const { type, project } = site.context;
  const say = sayIn(project.units);
  const piece = damagedAt(site);
  const whole = say(piece.to - piece.from);
  if (!isSamePieces(found.before.pieces, site.layout.pieces))
    return `Type ${type.id}, or what this run is joined to, has changed since the run was released, and by today's rules its other sections could not stay. The office releases the run anew first.`;
  if (found.stopped.length > 0)
    return `Sections that fill the place there are, but something that hangs is in the way of each: see below. Another section of ${whole} would do, or the office moves what is in the way.`;
  if (found.barred.length > 0)
    return `Every way puts a joint where none may stand: see below. Another section of ${whole} would do, or the office moves what keeps joints away, if it can be moved.`;
  return `${noSum(site, found)} Another section of ${whole} would do.`;
}

function noSum(site: SubstitutionSite, { cutToSpare }: Substitutes): string {
  const { type, project } = site.context;
  const say = sayIn(project.units);
  const piece = damagedAt(site);
  const length = piece.to - piece.from;
  const shorter = type.stockLengths.filter((stock) => stock < length).sort((a, b) => b - a)[0];
  if (shorter === undefined)
    return `Type ${type.id} comes in no stock length shorter than ${say(length)}: shorter ones would have to be on its sheet.`;
  const rest = say(length - shorter);
  const left = `With a ${say(shorter)} in it ${rest} is left, and no stock lengths of type ${type.id} add up to that.`;
  const { factoryCut } = type;
  if (factoryCut === null)
    return `${left} A factory cut of ${rest} would do, if the maker cuts this type: the office enters that on its sheet.`;
  if (!cutToSpare)
    return `${left} A straight part takes one factory cut, and this one has it elsewhere: make that section up of stock lengths first.`;
  return `${left} A factory cut is ${say(factoryCut.min)} to ${say(factoryCut.max)} in steps of ${say(factoryCut.step)}, and none of these fills it.`;
}
