/**
 * ANSI/NETA acceptance and maintenance testing specifications: the rows that a low-voltage busway needs, in their printed
 * shape. Copied from secondary copies of the tables (100.1 from MTS-2019, which prints the figures of the ATS; 100.14.1 from
 * the ATS): check against the edition that the contract names before relying on them.
 */
export const NETA_100_1 = {
  title: 'Insulation resistance test values, electrical apparatus and systems other than rotating machinery',
  source: 'ANSI/NETA ATS, table 100.1',
  edition: 'figures of MTS-2019, from a secondary copy',
  // Rows above 1 000 V are left out: no plug-in busway of this kind carries such a rating.
  rows: [
    { ratingV: 250, testVoltageV: 500, leastMegohm: 25 },
    { ratingV: 600, testVoltageV: 1000, leastMegohm: 100 },
    { ratingV: 1000, testVoltageV: 1000, leastMegohm: 100 },
  ],
} as const;

export const NETA_100_14_SOLID = {
  title: 'Insulation resistance conversion factors to 20 °C, solid insulation',
  source: 'ANSI/NETA ATS, table 100.14.1 (solid insulation)',
  edition: 'from a secondary copy',
  tempC: [-10, -5, 0, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90, 95, 100, 105, 110],
  factor: [
    0.25, 0.32, 0.4, 0.5, 0.63, 0.81, 1.0, 1.25, 1.58, 2.0, 2.5, 3.15, 3.98, 5.0, 6.3, 7.9, 10.0, 12.6, 15.8, 20.0,
    25.2, 31.6, 40.0, 50.4, 63.2,
  ],
} as const;

/** Busway is judged as if it were 1 000 ft long: R(1 000 ft) = R(measured) × length in ft / 1 000. From memory of ATS 7.4. */
export const NETA_BUSWAY_LENGTH = {
  source: 'ANSI/NETA ATS, section 7.4 (metal-enclosed busways)',
  edition: 'clause from memory',
  referenceFt: 1000,
} as const;
