/** Opens the earlier photo from a photo. */
export const openKey = 'U';

/** Ways of looking at then and now, each with its key. */
export const ways = [
  { value: 'beside', words: 'Side by side', keyCap: '1' },
  { value: 'swipe', words: 'Swipe', keyCap: '2' },
  { value: 'flip', words: 'Flip', keyCap: '3' },
] as const;

export type Way = (typeof ways)[number]['value'];

export const addKey = 'A';
export const flipKey = 'F';

/** For the list of all keys. */
export const compareKeys: readonly { readonly key: string; readonly words: string }[] = [
  { key: openKey, words: 'From a photo to then and now' },
  ...ways.map(({ keyCap, words }) => ({ key: keyCap, words })),
  { key: addKey, words: 'Add a matching point: press, or Enter for the middle of the photo' },
  { key: flipKey, words: 'Flip between then and now' },
];
