import { type NamedCondition, oneOf } from './named-condition.ts';

/** Compare 29 CFR 1928.51 and ISO 3471: an altered frame is no longer the tested one. */
export const rolloverFrame: NamedCondition = {
  id: 'rollover-frame',
  words: 'the rollover frame is altered, cracked or not bolted as made',
  matches: ({ classes, defect }) =>
    classes.has('rollover-frame') && oneOf(defect, 'missing', 'broken', 'crack', 'badrepair', 'wrongfast', 'loose'),
};
