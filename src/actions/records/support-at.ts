import { NEC_SPACING } from '../../domain/layout/support-limits.ts';
import type { Zone } from '../../domain/model.ts';
import type { Actor, NewRecord, SupportBody, WithdrawnBody } from '../../domain/quality/record.ts';
import { decideSupport, type SupportSite, supportCard } from '../../domain/quality/support-card.ts';
import { supportStretch } from '../../domain/quality/support-stretch.ts';
import type { SupportSurroundings } from '../../domain/quality/support-surroundings.ts';
import type { Length } from '../../domain/units/length.ts';
import type { Reader } from '../../store/database.ts';
import type { FloorRun, SupportRow } from '../../store/floor-run.ts';
import { recordsOf } from '../../store/records.ts';
import { rulesOf } from './rules-of.ts';
import { type Ruling, ruled } from './ruling.ts';

/** One hanger with all that judging a record on it takes. */
export interface SupportAt {
  readonly floor: FloorRun;
  readonly row: SupportRow;
  readonly site: SupportSite;
}

export async function supportAt(reader: Reader, floor: FloorRun, row: SupportRow, now: string): Promise<SupportAt> {
  const records = (await recordsOf(reader, [row.id])).get(row.id) ?? [];
  return {
    floor,
    row,
    site: {
      card: supportCard(records),
      around: surroundings(floor, row),
      rules: rulesOf(floor.project),
      now,
      version: row.version,
    },
  };
}

function surroundings({ run, type, layout, pieces, joints, supports, project }: FloorRun, row: SupportRow) {
  const stretch = supportStretch(row.atU80, layout.path, layout.pieces, layout.length);
  const inStretch = (at: Length) => stretch.from <= at && at <= stretch.to;
  const fittings = pieces.filter(isFitting).map(({ fromU80: from, toU80: to, kind }) => ({ from, to, reason: kind }));
  const { maxSpacing, maxEndOverhang, jointClear, fittingWithin } = type.support;
  const around: SupportSurroundings = {
    stretchStart: stretch.from,
    runLength: stretch.to,
    planned: row.atU80,
    others: supports.filter((other) => other.id !== row.id && inStretch(other.atU80)).map(standsAt),
    joints: joints.map((joint) => joint.atU80),
    fittings: run.feed.kind === 'tee' ? [{ from: 0, to: 0, reason: 'tee' }, ...fittings] : fittings,
    crossings: run.crossings.map(({ at, thickness, kind }): Zone => {
      return { from: at - thickness / 2, to: at + thickness / 2, reason: kind };
    }),
    noSupport: run.noSupport,
    structure: run.structure,
    limits: {
      maxSpacing: maxSpacing ?? (project.document.codeBasis === 'NEC' ? NEC_SPACING : null),
      maxEndOverhang,
      jointClear,
      fittingWithin,
      crossingClear: type.crossing.supportClear,
    },
  };
  return around;
}

function isFitting({ kind }: { readonly kind: string }): boolean {
  return kind === 'elbow' || kind === 'tee';
}

/** As measured where it is set, else where the layout puts it. */
function standsAt({ measuredU80, atU80 }: SupportRow): Length {
  return measuredU80 ?? atU80;
}

export function ruleSupport(at: SupportAt, record: NewRecord<SupportBody | WithdrawnBody>, actor: Actor): Ruling {
  return ruled(decideSupport(at.site, record, actor), ({ state, measured }) => ({
    state,
    save: async (tx) => {
      await tx.support.update({
        where: { id: at.row.id },
        data: {
          state,
          measuredU80: measured,
          version: { increment: 1 },
          ...(state === at.row.state ? {} : { stateAt: new Date(record.at) }),
        },
      });
    },
  }));
}
