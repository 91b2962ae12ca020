/**
 * The busway installation guide's own rule: least MΩ of an installed run = 100 / length in ft. From memory of NEMA BU 1.1;
 * about a thousand times easier than the acceptance specification's. It prints no temperature correction.
 */
export const BUSWAY_GUIDE_INSULATION = {
  source: 'NEMA BU 1.1, insulation resistance of an installed run',
  edition: 'from memory',
  megohmFeet: 100,
} as const;
