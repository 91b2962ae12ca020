/** Sizes of the strip in drawing units: px on a screen, pt on paper. */
export const MARGIN = { left: 78, right: 46 };
export const LETTER = 11;
export const ROW = 13;
/** Room between the drawing and the nearest row of labels, where leaders bend. */
export const FAN = 9;
export const LANE_ROWS = 5;
export const HEADING = 16;
export const BODY = 18;
export const ROD = 26;
export const CLAMP = { width: 7, reach: 5 };
export const CLIP = { width: 9, height: 8 };
export const TAP = { width: 13, height: 12 };
