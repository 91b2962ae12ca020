// Magnus coefficients over water, WMO-No. 8 (Guide to Instruments and Methods of Observation), good for -45…60 °C.
const B = 17.62;
const C = 243.12;
/** The surface must be at least this much above the dew point, K: below it water may stand on the insulation. */
export const DEW_POINT_MARGIN_K = 3;

/**
 * Dew point of air, °C, from its temperature (°C) and relative humidity (%, above 0 to 100), by the Magnus formula.
 * `dewPointC(24, 70) = 18.2`.
 */
export function dewPointC(airTempC: number, humidityPercent: number): number {
  const gamma = Math.log(humidityPercent / 100) + (B * airTempC) / (C + airTempC);
  return (C * gamma) / (B - gamma);
}
