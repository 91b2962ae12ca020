/** What may be sent to lie under a level's plan. */
export const PICTURE_KINDS = ['png', 'jpeg', 'pdf'] as const;
export type PictureKind = (typeof PICTURE_KINDS)[number];
