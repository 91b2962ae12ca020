/** What a turnover usually asks for and this edition keeps no record of: said, so that nobody takes the package for the whole. */
export const NOT_HELD = [
  "photographs, instrument certificates and the maker's operation and maintenance papers",
  'continuity, polarity and phase rotation; voltage at feed and far end; joint resistance; thermal scans under load: the record says that they were reported done, and holds no readings',
  'the energising gate, locks and signatures; punch list; deviations, change orders and questions; permits and final inspections',
  'warranty start and contacts, spares and tools handed over, training, lien waivers and stored-material reconciliation',
  'electrical figures of the finished system: loading, voltage, fault level and balance',
] as const;
