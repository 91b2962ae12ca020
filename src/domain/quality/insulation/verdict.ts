/**
 * `incomplete`: not every pair is shown to hold. `information-only`: readings kept as they are, and proving nothing, because
 * the instrument was out of calibration or the surface too near the dew point.
 */
export const VERDICTS = ['pass', 'fail', 'incomplete', 'information-only'] as const;
export type Verdict = (typeof VERDICTS)[number];
