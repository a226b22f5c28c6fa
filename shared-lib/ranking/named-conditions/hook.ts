import { type NamedCondition, oneOf } from './named-condition.ts';

export const hook: NamedCondition = {
  id: 'hook',
  words: 'the hook is cracked',
  matches: ({ classes, defect }) => classes.has('hook') && oneOf(defect, 'crack', 'broken'),
};
