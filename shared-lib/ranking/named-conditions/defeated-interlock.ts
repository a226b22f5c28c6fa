import type { NamedCondition } from './named-condition.ts';

export const defeatedInterlock: NamedCondition = {
  id: 'defeated-interlock',
  words: 'an interlock is defeated',
  matches: ({ classes, defect }) => classes.has('interlock') && defect === 'bypass',
};
