/**
 * Volume of a drop, mL. Common practice, no source, beside USP <1101>: twenty drops of water make 1 mL within 10 %; oil
 * was measured at 28 to 35 drops.
 */
export const dropVolumeMl = { 'like water': 0.05, 'light oil': 0.035, 'heavy oil': 0.045 } as const;
export type DropKind = keyof typeof dropVolumeMl;
export const dropKinds = Object.keys(dropVolumeMl) as readonly DropKind[];
/** With a drop's volume taken from the table a count is good to a factor of one and a half. */
export const countedOffShare = 0.5;
export const usGallonMl = 3785.411784;
