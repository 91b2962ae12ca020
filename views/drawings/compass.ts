const POINTS = ['east', 'north-east', 'north', 'north-west', 'west', 'south-west', 'south', 'south-east'] as const;

/** A heading of the job document (0 = east, 90 = north, anticlockwise) in words: `90` is "north", `123` is "north-west (123°)". */
export function compassWord(degrees: number): string {
  const turned = ((degrees % 360) + 360) % 360;
  const nearest = Math.round(turned / 45);
  const word = POINTS[nearest % 8]!;
  return Math.abs(turned - nearest * 45) < 0.5 ? word : `${word} (${Math.round(turned)}°)`;
}
