import type { BidEntries } from './bid/bid-entries.ts';
import type { Ordering } from './ordering/ordering.ts';
import type { Length } from './units/length.ts';

/**
 * The job as the domain sees it: the job document with its defaults applied and every length an integer (`Length`).
 * A limit that the sheet does not state is `null`, which means unknown: never a pass, never a silent default.
 * Money is integer minor units. `document/to-model.ts` makes these values; nothing here is ever changed in place.
 */
export interface Job {
  readonly project: Project;
  readonly levels: readonly Level[];
  readonly types: readonly BuswayType[];
  readonly runs: readonly Run[];
  readonly extras: readonly Extra[];
  readonly labourBook: LabourBook | null;
  readonly bid: Bid | null;
}

/** What is counted and hung: a job but for what its hours and its price are reckoned with. */
export type UnpricedJob = Omit<Job, 'labourBook' | 'bid'>;

export type UnitSystem = 'ft-in' | 'metric';
export type CodeBasis = 'NEC' | 'IEC';
export type Side = 'left' | 'right';

export interface Project {
  readonly number: string;
  readonly name: string;
  readonly units: UnitSystem;
  readonly currency: string;
  readonly codeBasis: CodeBasis;
  readonly codeEdition: string | null;
  readonly industrial: boolean;
  readonly frequencyHz: number;
  readonly voltageLL: number;
  readonly voltageLN: number;
  readonly voltageDropLimitPercent: number;
  readonly unbalanceLimitPercent: number;
  /** Spares, lead times, cord and strip stock, tools; null: the job states none. */
  readonly ordering: Ordering | null;
}

export interface Level {
  readonly id: string;
  readonly name: string;
  readonly order: number;
  readonly elevation: Length | null;
  readonly structureHeight: Length | null;
  readonly conditions: {
    readonly mountingHeight: Length | null;
    readonly congestion: 'open' | 'normal' | 'tight';
    readonly liveArea: boolean;
    readonly storeysAboveGrade: number;
  };
}

export interface BuswayType {
  readonly id: string;
  readonly sheet: { readonly document: string; readonly revision: string; readonly date: string } | null;
  readonly ratedCurrentA: number;
  readonly ratedVoltageV: number;
  readonly poles: number;
  readonly neutral: 'none' | 'full' | 'double';
  readonly hundredPercentRated: boolean;
  readonly phaseOhmPerKm: Impedance;
  readonly neutralOhmPerKm: Impedance | null;
  readonly shortCircuitKA: number;
  readonly shortCircuitCycles: number | null;
  readonly weightKgPerM: number;
  /** Longest first, without repeats. */
  readonly stockLengths: readonly Length[];
  readonly factoryCut: { readonly min: Length; readonly max: Length; readonly step: Length } | null;
  readonly feed: { readonly joins: boolean; readonly weightKg: number | null };
  readonly support: {
    readonly maxSpacing: Length | null;
    readonly maxEndOverhang: Length | null;
    readonly jointClear: Length | null;
    readonly step: Length;
    readonly fittingWithin: Length | null;
    readonly source: string | null;
  };
  readonly tap: {
    readonly jointClear: Length | null;
    readonly endClear: Length | null;
    readonly minSpacing: Length | null;
    readonly boxLength: Length | null;
  };
  /** How a tap-off's box stands out from the busway's centre line, and the room to be kept free before it. */
  readonly tapFront: {
    readonly boxDepth: Length | null;
    /** Half of it above the busway's centre line, half below. */
    readonly boxHeight: Length | null;
    readonly clearRoom: Length | null;
  };
  readonly crossing: { readonly jointClear: Length | null; readonly supportClear: Length | null };
  readonly joint: {
    readonly clamps: number;
    readonly contactSets: number;
    readonly bolts: number;
    readonly torqueNm: number | null;
    readonly steps: readonly string[] | null;
  };
  readonly elbow: Fitting | null;
  readonly tee: Fitting | null;
  readonly words: {
    readonly clamp: string | null;
    readonly contactSet: string | null;
    readonly seatingTool: string | null;
  };
  readonly prices: Prices;
}

export interface Impedance {
  readonly r: number;
  readonly x: number;
}

export interface Fitting {
  readonly leg: Length;
  readonly weightKg: number | null;
  readonly handed: boolean;
}

/** Minor units; `null` is a price that nobody has given, never a price of zero. */
export interface Prices {
  readonly sections: readonly { readonly length: Length; readonly price: number }[];
  readonly sectionPerM: number | null;
  readonly cutSurcharge: number | null;
  readonly jointKit: number | null;
  readonly elbow: number | null;
  readonly tee: number | null;
  readonly endFeed: number | null;
  readonly endCap: number | null;
  readonly support: number | null;
  readonly tap: number | null;
  readonly drop: number | null;
}

export interface Run {
  readonly id: string;
  readonly level: string;
  readonly area: string | null;
  readonly type: string;
  readonly side: 'A' | 'B' | null;
  readonly pairedRun: string | null;
  readonly start: { readonly x: Length; readonly y: Length; readonly z: Length };
  /** Whether the job states `start`; without it the run has no place in plan and `start` is the origin. */
  readonly hasStart: boolean;
  readonly headingDeg: number;
  readonly conductorSide: Side;
  readonly feed: RunFeed;
  /** What the last leg may be covered to, measured like its `length`; null = exactly `length`. */
  readonly end: { readonly reach: Length; readonly hardStop: Length } | null;
  readonly legs: readonly Leg[];
  readonly crossings: readonly Crossing[];
  readonly noJoint: readonly Zone[];
  readonly noSupport: readonly Zone[];
  readonly structure:
    | { readonly kind: 'continuous' }
    | { readonly kind: 'grid'; readonly pitch: Length; readonly offset: Length };
  readonly drop: Length | null;
  readonly rod: string | null;
  readonly rodStock: Length;
  readonly attachment: 'anchor' | 'beam-clamp' | 'trapeze' | 'strut' | null;
  readonly supportCapacityKg: number | null;
  readonly taps: readonly Tap[];
  /** null: every section is chosen freely. */
  readonly fieldHold: FieldHold | null;
}

/** What the floor substituted: a layout keeps to it while the route lets it. */
export interface FieldHold {
  /** Straight sections in their places, in order. */
  readonly sections: readonly HeldSection[];
  /** Where the hangers stood: those that are still legal stay. */
  readonly supports: readonly Length[];
}

export interface HeldSection {
  readonly from: Length;
  readonly to: Length;
  readonly kind: 'stock' | 'cut';
}

export interface RunFeed {
  readonly kind: 'end' | 'centre' | 'tee';
  readonly fromRun: string | null;
  readonly at: Length | null;
  readonly branchSide: Side | null;
  readonly supply: string | null;
  readonly deviceA: number | null;
  readonly deviceHundredPercent: boolean;
  readonly faultKA: number | null;
  readonly xOverR: number | null;
  readonly cable: {
    readonly lengthM: number;
    readonly ohmPerKm: Impedance;
    readonly parallel: number;
    readonly neutralOhmPerKm: Impedance | null;
  } | null;
  readonly terminations: number;
}

export type Turn = 'none' | 'left' | 'right' | 'up' | 'down';

export interface Leg {
  readonly length: Length;
  readonly turn: Turn;
  readonly tapsMustFace: Side | null;
}

export interface Crossing {
  readonly at: Length;
  readonly thickness: Length;
  readonly kind: 'wall' | 'fire-wall' | 'floor';
  readonly fireRatingMin: number;
}

export interface Zone {
  readonly from: Length;
  readonly to: Length;
  readonly reason: string | null;
}

export interface Tap {
  readonly id: string;
  /** Either a distance along the run or the plan position of what the tap serves. */
  readonly place: { readonly at: Length } | { readonly near: { readonly x: Length; readonly y: Length } };
  readonly fixed: boolean;
  readonly phases: 'L1' | 'L2' | 'L3' | 'L1-L2' | 'L2-L3' | 'L3-L1' | 'L1-L2-L3';
  readonly neutral: boolean;
  readonly deviceA: number;
  readonly interruptingKA: number | null;
  readonly load: { readonly kind: 'VA'; readonly va: number } | { readonly kind: 'A'; readonly amperes: number };
  readonly powerFactor: number;
  readonly continuous: boolean;
  readonly thirdHarmonic: number;
  readonly movablePhase: boolean;
  readonly serves: string | null;
  readonly pair: string | null;
  readonly drop: Length | null;
  readonly weightKg: number | null;
}

/** What the estimator adds by hand; marked as such wherever it shows. */
export interface Extra {
  readonly item: string;
  readonly level: string | null;
  readonly quantity: number;
  readonly unit: string;
  readonly price: number | null;
  readonly hours: number | null;
  readonly note: string | null;
}

/** What turns cost into a price. Minor units and percent; `null` is what nobody has entered, never nought. */
export interface Bid extends BidEntries {
  /** Quoted material, in place of the priced takeoff. */
  readonly materials: number | null;
  readonly taxPercent: number | null;
  readonly other: number | null;
  readonly supervision: number | null;
  readonly overheadPercent: number | null;
  /** A markup is on cost, a margin is of the price. */
  readonly profit: { readonly kind: 'markup' | 'margin'; readonly percent: number } | null;
  /** The chance, in percent, that the hours with contingency are enough. */
  readonly contingencyP: number | null;
}

export interface ThreePoint {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

export type FactorName = 'height' | 'congestion' | 'storey' | 'live';

export interface LabourBook {
  readonly version: string;
  readonly policy: 'add' | 'compound';
  readonly activities: readonly LabourActivity[];
  readonly factors: {
    readonly height: readonly { readonly over: Length; readonly percent: number }[];
    readonly congestion: { readonly open: number; readonly normal: number; readonly tight: number };
    readonly storeyPercentEach: number;
    readonly livePercent: number;
  };
  /** Conditions of the whole job. `activities` null: those that feel any condition of a level. */
  readonly jobConditions: readonly {
    readonly name: string;
    readonly percent: number;
    readonly activities: readonly string[] | null;
  }[];
  readonly learning: {
    readonly rate: number;
    readonly referenceRepeat: number;
    readonly over: 'run' | 'level';
    readonly activities: readonly string[];
  } | null;
  readonly nonProductivePercent: number;
  /** Hours of a working day that nobody works, in place of the percentage: never both. */
  readonly nonProductiveDay: { readonly lostHours: number; readonly dayHours: number } | null;
  /** Paid rates are straight time; the burden is a percentage of all that is paid, the overtime premium included. */
  readonly crew: readonly {
    readonly role: string;
    readonly number: number;
    readonly ratePerHour: number;
    readonly burdenPercent: number;
    readonly effectiveness: number;
  }[];
  readonly overtime: Overtime | null;
  readonly correlation: number;
  readonly trials: number;
  readonly seed: number;
}

/** A week longer than straight time: hours beyond `straightHours` are paid `premium` times, and less is done in every hour. */
export interface Overtime {
  readonly hoursPerWeek: number;
  readonly straightHours: number;
  readonly premium: number;
  /** The part of an hour's work that is done in a week of so many hours; 1 claims that nobody tires. */
  readonly productivity: number;
}

/**
 * `bands` refine the base by the busway's rated current (`upToA`), the piece's length (`upTo`) or both, least first; null for
 * what a band does not ask. `baseHours` says which serves.
 */
export interface LabourActivity extends ThreePoint {
  readonly id: string;
  readonly unit: string;
  readonly bands: readonly ({ readonly upToA: number | null; readonly upTo: Length | null } & ThreePoint)[];
  readonly factors: readonly FactorName[];
}
