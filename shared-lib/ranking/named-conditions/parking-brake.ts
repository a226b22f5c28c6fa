import type { NamedCondition } from './named-condition.ts';

export const parkingBrake: NamedCondition = {
  id: 'parking-brake',
  words: 'the parking brake creeps and nothing else holds it',
  matches: ({ classes, facts }) =>
    classes.has('parking-brake') && facts.has('creeps-on-slope-used') && !facts.has('other-hold'),
};
