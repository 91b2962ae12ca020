const WORDS: Readonly<Record<string, string>> = {
  number: 'Job number',
  name: 'What the job is called',
  client: 'Client',
  site: 'Site',
  units: 'Lengths are shown in',
  currency: 'Currency',
  timeZone: 'Time zone of the site',
  codeBasis: 'Code basis',
  codeEdition: 'Edition in force at the site',
  industrial: 'An industrial establishment',
  frequencyHz: 'Frequency',
  voltageLL: 'Voltage line to line',
  voltageLN: 'Voltage line to neutral',
  voltageDropLimitPercent: 'The job’s own limit of voltage drop',
  unbalanceLimitPercent: 'The job’s own limit of unbalance at the feed',
};

/** What the heading of a job calls an entry. */
export function projectEntryWord(name: string): string {
  return WORDS[name] ?? name;
}
