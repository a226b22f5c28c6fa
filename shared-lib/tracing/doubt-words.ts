import type { TraceDoubt } from './judge.ts';

const words: Readonly<Record<TraceDoubt, string>> = {
  gap: 'the line is hardly to be seen for a stretch',
  'along-straight-line': 'it follows a straight line that may be a joint, an edge or a tool mark',
  'another-way': 'another way is nearly as likely',
};

export function doubtText(doubt: TraceDoubt): string {
  return words[doubt];
}
