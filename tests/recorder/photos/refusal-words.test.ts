import { expect, it } from 'vitest';
import { takeIn } from '../../../electron/recorder/photos/take-in.ts';
import { errorText } from '../../../shared-lib/wording/errors.ts';
import { fixture, openRoom, refusalOf } from './photo-room.ts';

it.for([
  ['text.jpg', 'A text file is not a photo'],
  ['page.jpg', 'A web page is not a photo'],
  ['script.svg', 'A drawing, not a photo'],
  ['cut-25.jpg', 'a part of it is missing'],
  ['cut-header.jpg', 'its beginning makes no sense'],
  ['bomb.gif', 'unfolds into far too much'],
  ['empty.jpg', 'The file is empty'],
  ['no-such-file.jpg', 'there is none of that name, or no longer'],
] as const)('says of %s in words why it is refused', async ([name, words]) => {
  expect(errorText(await refusalOf(takeIn(openRoom(), fixture(name), name)))).toContain(words);
});
