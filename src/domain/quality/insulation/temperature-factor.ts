import { NETA_100_14_SOLID } from '../../tables/neta-ats.ts';

const { tempC: TEMPS, factor: FACTORS } = NETA_100_14_SOLID;
export const LEAST_TEMP_C = TEMPS[0];
export const GREATEST_TEMP_C = 110;

/**
 * What a reading at this surface temperature (°C) is multiplied by to stand at 20 °C: the printed solid-insulation factor of
 * NETA ATS table 100.14.1, between its 5 °C points interpolated on the logarithm. Null outside -10…110 °C, where the table
 * ends. `temperatureFactor(28) = 1.439`.
 */
export function temperatureFactor(tempC: number): number | null {
  if (!(tempC >= LEAST_TEMP_C && tempC <= GREATEST_TEMP_C)) return null;
  const above = TEMPS.findIndex((printed) => printed >= tempC);
  const upper = { temp: TEMPS[above], factor: FACTORS[above] };
  const lower = { temp: TEMPS[above - 1], factor: FACTORS[above - 1] };
  if (upper.temp === undefined || upper.factor === undefined) return null;
  if (lower.temp === undefined || lower.factor === undefined || upper.temp === tempC) return upper.factor;
  const part = (tempC - lower.temp) / (upper.temp - lower.temp);
  return lower.factor * (upper.factor / lower.factor) ** part;
}
