/** What is taken as a background, and what becomes of it. */
export const MOST_MEGABYTES = 20;
export const MOST_BYTES = MOST_MEGABYTES * 1024 * 1024;
/** Of a picture as it is sent, before it is opened: 40 million pixels take 160 MB to open. */
export const MOST_PIXELS = 40_000_000;
export const MOST_SIDE = 12_000;
export const LEAST_SIDE = 100;
/** Of the picture that is kept; larger ones are drawn smaller. */
export const LONGEST_KEPT = 6_000;
export const MOST_KEPT_BYTES = 16 * 1024 * 1024;
/** Of a printed copy: letter paper at 300 dots to the inch. */
export const LONGEST_ON_PAPER = 3_300;
/** A page of a PDF is drawn at this resolution, a large one at less: 36 × 24 in makes 5400 × 3600 pixels. */
export const PAGE_DOTS_PER_INCH = 150;
export const MOST_SECONDS = 30;

/** How much of the picture's ink is left under a plan, on paper. */
export const PALE = 0.4;

export const TAKEN_WORDS = `PNG, JPEG or PDF, up to ${MOST_MEGABYTES} MB; a picture up to ${MOST_PIXELS / 1e6} million pixels and ${MOST_SIDE} on a side.`;
