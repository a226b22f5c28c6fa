import { commonPractice } from '../sheet-kind.ts';

/** Chain; leaf chains see ISO 4347 and the maker. */
export const elongation = commonPractice({ max: 3 });
/** Fork heel; ISO 5057 takes a fork out of use at a tenth. */
export const heelLoss = commonPractice({ max: 10 });
