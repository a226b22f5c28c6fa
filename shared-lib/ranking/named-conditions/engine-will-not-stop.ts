import { type NamedCondition, oneOf } from './named-condition.ts';

export const engineWillNotStop: NamedCondition = {
  id: 'engine-will-not-stop',
  words: 'the stop control does not stop the engine',
  matches: ({ classes, defect }) =>
    classes.has('stop-control') && oneOf(defect, 'inop', 'bypass', 'broken', 'missing', 'seizure'),
};
