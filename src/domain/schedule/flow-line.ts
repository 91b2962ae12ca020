/** Crews in the order in which they follow each other on a floor, floors in the order in which they are worked. Days. */
export interface FlowInput {
  readonly crews: readonly {
    readonly name: string /** Working days on each floor. */;
    readonly days: readonly number[];
  }[];
  /** Working days that lie between one crew's finish on a floor and the next crew's start there. */
  readonly buffer: number;
  /** First day on which a floor may be worked, in working days from the start; absent: 0. */
  readonly released?: readonly number[];
}

export interface Stay {
  readonly start: number;
  readonly finish: number;
}

export interface CrewLine {
  readonly name: string;
  /** One stay a floor. */
  readonly stays: readonly Stay[];
  /** Days between the crew's first start and last finish on which it stands. */
  readonly idle: number;
}

export interface FlowPlan {
  readonly crews: readonly CrewLine[];
  readonly finish: number;
  readonly idle: number;
}

/**
 * Crews over floors where every crew, once begun, goes from floor to floor without standing:
 * `S_k = max over f of (ready_k(f) - sum of D_k below f)`, where a floor is ready for a crew when the one before it has
 * left and the buffer is over, and not before its release. Working days; 0 is the morning of the first.
 *
 * Source: line-of-balance (flow line) planning, common practice.
 * Example: four floors, 6, 5, 7 and 3 days, buffer 1: starts 0, 10, 16, 36; finish 48.
 */
export function continuousPlan(input: FlowInput): FlowPlan {
  return plan(input, (days, ready) => {
    const before = runningSums(days);
    const start = Math.max(...ready.map((day, floor) => day - before[floor]!));
    return days.map((length, floor) => stay(start + before[floor]!, length));
  });
}

/**
 * The same crews, each going to its next floor as soon as it and the floor are free: the earliest finish, with crews that
 * stand between floors.
 *
 * Source: as above. Example: 6, 5, 7 and 3 days, buffer 1: finish 45, the second crew stands 3 days and the fourth 12.
 */
export function earliestPlan(input: FlowInput): FlowPlan {
  return plan(input, (days, ready) => {
    let free = 0;
    return days.map((length, floor) => {
      const next = stay(Math.max(free, ready[floor]!), length);
      free = next.finish;
      return next;
    });
  });
}

type Placing = (days: readonly number[], ready: readonly number[]) => readonly Stay[];

function plan({ crews, buffer, released = [] }: FlowInput, place: Placing): FlowPlan {
  const floors = crews[0]?.days.length ?? 0;
  const release = Array.from({ length: floors }, (_, floor) => released[floor] ?? 0);
  const lines: CrewLine[] = [];
  for (const { name, days } of crews) {
    if (days.length !== floors) throw new RangeError(`${name} has ${days.length} floors, the first crew ${floors}`);
    const ahead = lines.at(-1)?.stays;
    const ready = release.map((day, floor) => (ahead ? Math.max(day, ahead[floor]!.finish + buffer) : day));
    const stays = floors === 0 ? [] : place(days, ready);
    lines.push({ name, stays, idle: idleDays(stays) });
  }
  return {
    crews: lines,
    finish: Math.max(0, ...lines.flatMap(({ stays }) => stays.map(({ finish }) => finish))),
    idle: lines.reduce((sum, { idle }) => sum + idle, 0),
  };
}

function idleDays(stays: readonly Stay[]): number {
  return stays.slice(1).reduce((sum, { start }, i) => sum + start - stays[i]!.finish, 0);
}

function stay(start: number, length: number): Stay {
  return { start, finish: start + length };
}

function runningSums(days: readonly number[]): number[] {
  let sum = 0;
  return days.map((length) => {
    const before = sum;
    sum += length;
    return before;
  });
}
