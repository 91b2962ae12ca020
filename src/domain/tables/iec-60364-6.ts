/**
 * IEC 60364-6, table 6.1 (6A in the 2006 edition), clause 6.4.3.3: least insulation resistance by the circuit's nominal
 * voltage. A legal minimum in many countries, not an acceptance target. From a secondary copy.
 */
export const IEC_60364_6_INSULATION = {
  source: 'IEC 60364-6, clause 6.4.3.3, table 6.1',
  edition: 'from a secondary copy',
  rows: [
    { circuit: 'SELV and PELV', aboveV: null, upToV: null, testVoltageV: 250, leastMegohm: 0.5 },
    { circuit: 'up to and including 500 V, FELV included', aboveV: 0, upToV: 500, testVoltageV: 500, leastMegohm: 1.0 },
    { circuit: 'above 500 V', aboveV: 500, upToV: null, testVoltageV: 1000, leastMegohm: 1.0 },
  ],
} as const;
