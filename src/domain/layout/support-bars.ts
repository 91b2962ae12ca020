import type { Length } from '../units/length.ts';
import type { SupportBar, SupportLimits, SupportSetting, SupportWindow } from './support-grid.ts';
import type { SupportStretch } from './support-stretches.ts';

/**
 * Where no support may stand: blocked zones, walls with their clearance, joints with theirs. A hanger sits anywhere else along
 * the housing, a fitting's included. A limit that is not stated binds nothing, but a wall itself stays barred.
 */
export function supportBars({ run, type, joints }: SupportSetting): readonly SupportBar[] {
  const beside = type.crossing.supportClear ?? 0;
  const clear = type.support.jointClear;
  return [
    ...run.noSupport.map(({ from, to, reason }) => ({ kind: 'zone' as const, from, to, reason })),
    ...run.crossings.map((crossing) => {
      const half = crossing.thickness / 2 + beside;
      return { kind: 'crossing' as const, from: crossing.at - half, to: crossing.at + half, reason: crossing.kind };
    }),
    ...(clear === null ? [] : joints.map(({ at }) => jointBar(at, clear))),
  ];
}

function jointBar(at: Length, clear: Length): SupportBar {
  return { kind: 'joint', from: at - clear, to: at + clear, reason: null };
}

/**
 * What must hold a support: the overhang at each end of the stretch, and with `fittingWithin` each straight arm beside a
 * fitting, also the branch's own start at its tee. Fittings that touch have no arm between them, and none is asked for there.
 */
export function supportWindows(
  setting: SupportSetting,
  limits: SupportLimits,
  stretch: SupportStretch,
): readonly SupportWindow[] {
  const ends: SupportWindow[] = [
    { kind: 'start', from: stretch.from, to: Math.min(stretch.to, stretch.from + limits.maxEndOverhang) },
    { kind: 'end', from: Math.max(stretch.from, stretch.to - limits.maxEndOverhang), to: stretch.to },
  ];
  const within = setting.type.support.fittingWithin;
  return within === null ? ends : [...ends, ...armWindows(setting, within, stretch)];
}

function armWindows(setting: SupportSetting, within: Length, stretch: SupportStretch): SupportWindow[] {
  const { fittings, run, pieces } = setting;
  const after = fittings.map((fitting) => fitting.to);
  if (run.feed.kind === 'tee') after.push(0);
  const starts = new Set(pieces.filter(isStraight).map((piece) => piece.from));
  const ends = new Set(pieces.filter(isStraight).map((piece) => piece.to));
  const windows = [
    ...fittings.filter((fitting) => ends.has(fitting.from)).map(({ from }) => ({ from: from - within, to: from })),
    ...after.filter((face) => starts.has(face)).map((face) => ({ from: face, to: face + within })),
  ];
  return windows
    .filter((window) => window.to >= stretch.from && window.from <= stretch.to)
    .map((window) => ({
      kind: 'fitting' as const,
      from: Math.max(stretch.from, window.from),
      to: Math.min(stretch.to, window.to),
    }));
}

function isStraight(piece: SupportSetting['pieces'][number]): boolean {
  return piece.kind === 'stock' || piece.kind === 'cut';
}
