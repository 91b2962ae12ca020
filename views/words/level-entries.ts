const WORDS: Readonly<Record<string, string>> = {
  id: 'Level, as runs name it',
  name: 'What the level is called',
  order: 'Place in the order of work',
  elevationMm: 'Elevation of the finished floor',
  structureHeightMm: 'Floor to the structure above',
  'conditions.mountingHeightMm': 'Height of the busway above the floor',
  'conditions.congestion': 'Ceiling',
  'conditions.storeysAboveGrade': 'Storeys that people and material climb',
  'conditions.liveArea': 'Work beside equipment in service',
};

/** What the form of a level calls an entry, by its path. */
export function levelEntryWord(path: string): string {
  return WORDS[path] ?? path;
}
