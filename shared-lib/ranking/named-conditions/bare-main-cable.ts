import { type NamedCondition, oneOf } from './named-condition.ts';

export const bareMainCable: NamedCondition = {
  id: 'bare-main-cable',
  words: 'a main cable is bare at full current',
  matches: ({ defect, facts }) =>
    facts.has('bare-full-current') && oneOf(defect, 'chafe', 'broken', 'agehard', 'badrepair'),
};
