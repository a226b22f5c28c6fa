import { type NamedCondition, oneOf } from './named-condition.ts';

export const wheelOrRim: NamedCondition = {
  id: 'wheel-or-rim',
  words: 'a rim is cracked or wheel studs are missing',
  matches: ({ classes, defect }) =>
    (classes.has('wheel') || classes.has('rim')) &&
    ((defect === 'crack' && !classes.has('wheel-stud')) ||
      (classes.has('wheel-stud') && oneOf(defect, 'missing', 'broken'))),
};
