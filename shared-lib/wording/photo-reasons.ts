/** Why a photo was refused, in words that fit into a sentence; the recorder sends the keys. */
const words: ReadonlyMap<string, string> = new Map([
  // what it is instead
  ['pdf', 'a PDF'],
  ['html', 'a web page'],
  ['zip', 'a zip archive'],
  ['text', 'a text file'],
  ['unknown', 'this file'],
  // what is wrong with it
  ['header', 'its beginning makes no sense'],
  ['cut-off', 'a part of it is missing'],
  ['not-decodable', 'no picture comes out of it'],
  ['size-differs', 'the picture in it is not as large as it says'],
  ['decoder-crashed', 'it breaks what opens it'],
  // why it could not be read
  ['not-allowed', 'you are not allowed to read it'],
  ['gone', 'there is none of that name, or no longer'],
  ['read-error', 'the card or disk gives an error'],
  ['no-ordinary-file', 'it is not an ordinary file'],
  // kinds of picture
  ['bmp', 'a BMP picture'],
  ['video', 'a video'],
  ['camera-raw', 'a camera’s raw file'],
  ['jpeg-xl', 'a JPEG XL picture'],
  ['jpeg-2000', 'a JPEG 2000 picture'],
  ['layered', 'a layered drawing'],
]);

export const photoReason = (key: string): string => words.get(key) ?? key;
