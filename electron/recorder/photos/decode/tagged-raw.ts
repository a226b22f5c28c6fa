import type { RawPicture } from './heic.ts';

/** TIFF 6.0 field types. */
const short = 3;
const long = 4;
const undefinedBytes = 7;

/**
 * Wraps bare pixels and their colour profile in an uncompressed TIFF, because the image library converts colours only
 * from a file that carries its profile.
 *
 * Source: TIFF 6.0, section 6 (RGB) and tag 34675 of the ICC specification, annex B.
 */
export const tiffWithProfile = ({ data, width, height, channels }: RawPicture, profile: Uint8Array): Buffer => {
  const fields = 11;
  const directory = 8;
  const bits = directory + 2 + fields * 12 + 4;
  const profileAt = bits + channels * 2;
  const pixelsAt = profileAt + profile.length + (profile.length % 2);
  const file = Buffer.alloc(pixelsAt + data.length);
  file.write('II', 0, 'latin1');
  file.writeUInt16LE(42, 2);
  file.writeUInt32LE(directory, 4);
  file.writeUInt16LE(fields, directory);
  let at = directory + 2;
  const field = (tag: number, type: number, count: number, value: number): void => {
    file.writeUInt16LE(tag, at);
    file.writeUInt16LE(type, at + 2);
    file.writeUInt32LE(count, at + 4);
    file.writeUInt32LE(value, at + 8);
    at += 12;
  };
  field(256, long, 1, width);
  field(257, long, 1, height);
  field(258, short, channels, bits);
  field(259, short, 1, 1); // no compression
  field(262, short, 1, 2); // RGB
  field(273, long, 1, pixelsAt);
  field(277, short, 1, channels);
  field(278, long, 1, height); // one strip
  field(279, long, 1, data.length);
  field(338, short, channels - 3, channels === 4 ? 2 : 0); // unassociated alpha
  field(34675, undefinedBytes, profile.length, profileAt);
  for (let channel = 0; channel < channels; channel += 1) file.writeUInt16LE(8, bits + channel * 2);
  file.set(profile, profileAt);
  file.set(data, pixelsAt);
  return file;
};
