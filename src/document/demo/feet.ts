const FOOT_MM = 304.8;
const POUND_KG = 0.453_592_37;

/** Feet to millimetres, exact to the 0.0125 mm that the job document keeps. `feet(70) = 21336`. */
export function feet(value: number): number {
  return Math.round(value * FOOT_MM * 80) / 80;
}

/** Pounds per foot to kilograms per metre, to six decimals. `poundsPerFoot(8.5) = 12.649394`. */
export function poundsPerFoot(value: number): number {
  return sixDecimals((value * POUND_KG) / (FOOT_MM / 1000));
}

export function pounds(value: number): number {
  return sixDecimals(value * POUND_KG);
}

/** Milliohms per foot to ohms per kilometre, to six decimals. `milliohmsPerFoot(0.09) = 0.295276`. */
export function milliohmsPerFoot(value: number): number {
  return sixDecimals(value / (FOOT_MM / 1000));
}

function sixDecimals(value: number): number {
  return Number(value.toFixed(6));
}
