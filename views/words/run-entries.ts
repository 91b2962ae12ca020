const WORDS: Readonly<Record<string, string>> = {
  id: 'Run',
  level: 'Level',
  area: 'Room or area',
  type: 'Busway type',
  side: 'Feed side',
  pairedRun: 'Paired run',
  conductorSide: 'Conductor side',
  'start.xMm': 'Start, east',
  'start.yMm': 'Start, north',
  'start.zMm': 'Start, above the floor',
  headingDeg: 'Heading of the first leg',
  'feed.kind': 'Feed',
  'feed.fromRun': 'From the tee of run',
  'feed.atMm': 'Tee or centre feed at',
  'feed.branchSide': 'Branch leaves to the',
  'feed.supply': 'Supply',
  'feed.deviceA': 'Upstream device',
  'feed.deviceHundredPercent': 'The device and its assembly are listed for 100 %',
  'feed.faultKA': 'Fault current at the source',
  'feed.xOverR': 'X/R of the source',
  'feed.terminations': 'Conductors to terminate',
  'feed.cable.lengthM': 'Feeder cable, length',
  'feed.cable.ohmPerKm.r': 'Feeder cable, R of a conductor',
  'feed.cable.ohmPerKm.x': 'Feeder cable, X of a conductor',
  'feed.cable.parallel': 'Feeder cable, parallel sets',
  'feed.cable.neutralOhmPerKm.r': 'Feeder cable, R of the neutral',
  'feed.cable.neutralOhmPerKm.x': 'Feeder cable, X of the neutral',
  'end.reachMm': 'Last leg reaches at least',
  'end.hardStopMm': 'Last leg reaches at most',
  'structure.kind': 'Structure carries a hanger',
  'structure.pitchMm': 'Distance between its lines',
  'structure.offsetMm': 'First line at',
  dropMm: 'Rod for each hanger',
  rod: 'Rod',
  rodStockMm: 'Rod is bought in lengths of',
  attachment: 'Held to the structure by',
  supportCapacityKg: 'One hanger may carry',
  legs: 'Legs',
  taps: 'Tap-offs',
};

const ROWS: Readonly<Record<string, string>> = {
  legs: 'leg',
  crossings: 'crossing',
  noJoint: 'no-joint zone',
  noSupport: 'no-hanger zone',
};

const CELLS: Readonly<Record<string, string>> = {
  lengthMm: 'Length',
  turn: 'Turn at its end',
  tapsMustFace: 'Tap-offs must face',
  atMm: 'Centre at',
  thicknessMm: 'Thickness',
  kind: 'Kind',
  fireRatingMin: 'Fire rating',
  fromMm: 'From',
  toMm: 'To',
  reason: 'What stands there',
};

/** What the form calls an entry of a run, by its path: `legs[1].lengthMm` is "Length of leg 2". */
export function runEntryWord(path: string): string {
  const [, group, row, cell] = /^(\w+)\[(\d+)\]\.(\w+)$/.exec(path) ?? [];
  if (group === undefined || row === undefined || cell === undefined) return WORDS[path] ?? path;
  return `${CELLS[cell] ?? cell} of ${ROWS[group] ?? group} ${Number(row) + 1}`;
}

export function cellWord(cell: string): string {
  return CELLS[cell] ?? cell;
}

/** The id of the field that an entry is typed into. */
export function entryId(path: string): string {
  const field = path === 'legs' ? 'legs[0].lengthMm' : path;
  return `f-${field.replace(/[^A-Za-z0-9_-]/g, '-')}`;
}
