import type { GrowDoubt } from './grown.ts';

const words: Readonly<Record<GrowDoubt, string>> = {
  'border-faint': 'the border is hardly to be seen for a stretch',
  'reaches-edge': 'the patch goes on beyond the photo',
  'other-extent': 'another border round the same spot is about as clear',
  'no-patch': 'hardly any border is to be seen at all',
};

export function growDoubtText(doubt: GrowDoubt): string {
  return words[doubt];
}
