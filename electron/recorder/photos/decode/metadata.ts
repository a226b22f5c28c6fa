import ExifReader from 'exifreader';

/** What the camera says of the moment and of itself. Place, serial numbers and owner's name are never read. */
export interface CameraFacts {
  /** `2024-03-31T02:30:00`, the camera's own wall clock; null where it says none or nonsense. */
  readonly takenLocal: string | null;
  /** Minutes east of UTC; null where the camera does not say. */
  readonly takenZoneOffsetMin: number | null;
  readonly camera: string | null;
}

type Tags = Readonly<Record<string, { value?: unknown } | undefined>>;

const tagText = (tags: Tags, name: string): string => {
  const tag = tags[name];
  const value = Array.isArray(tag?.value) ? tag.value[0] : tag?.value;
  // The reader writes this where a value lies outside the file.
  return typeof value === 'string' && value !== '<faulty value>' ? value : '';
};

/** One line of plain text: control, formatting and unassigned code points go, what is left is cut to a sane length. */
const plain = (text: string): string =>
  text
    .slice(0, 400)
    .replace(/[\p{C}\p{Zl}\p{Zp}\s]+/gu, ' ')
    .trim()
    .slice(0, 60)
    .trim();

/** Source: Exif 3.0, tag 0x9003: `YYYY:MM:DD HH:MM:SS`, blanks or zeros where unknown. */
const localTime = (text: string): string | null => {
  const found = /^(\d{4})[:-](\d{2})[:-](\d{2})[ T](\d{2}):(\d{2}):(\d{2})/.exec(text);
  if (!found) return null;
  const local = `${found[1]}-${found[2]}-${found[3]}T${found[4]}:${found[5]}:${found[6]}`;
  const asUtc = new Date(`${local}Z`);
  // Rejects 31 February and the like, and the year 0 of a camera whose clock was never set.
  if (Number.isNaN(asUtc.getTime()) || !asUtc.toISOString().startsWith(local)) return null;
  return asUtc.getUTCFullYear() < 1900 ? null : local;
};

/** Source: Exif 3.0, tags 0x9010 to 0x9012: `+02:00`, or blanks where unknown. */
const zoneOffsetMin = (text: string): number | null => {
  if (/^Z/.test(text)) return 0;
  const found = /^([+-])(\d{2}):(\d{2})/.exec(text);
  if (!found) return null;
  const minutes = Number(found[2]) * 60 + Number(found[3]);
  if (minutes > 14 * 60 || Number(found[3]) > 59) return null;
  return found[1] === '-' ? -minutes : minutes;
};

const cameraName = (make: string, model: string): string | null => {
  const isInModel = make !== '' && model.toLowerCase().startsWith(make.toLowerCase());
  return [isInModel ? '' : make, model].filter((part) => part !== '').join(' ') || null;
};

/** The EXIF times, each with the tag that gives its zone. */
const times = [
  ['DateTimeOriginal', 'OffsetTimeOriginal'],
  ['DateTimeDigitized', 'OffsetTimeDigitized'],
] as const;

const dngVersion = 0xc612;
const wantedTags = ['Make', 'Model', ...times.flat(), 'SubfileType', dngVersion];

const loadTags = (exif: Uint8Array): Tags | null => {
  // JPEG and PNG readers hand the block over with its APP1 name; the reader wants the TIFF structure in it.
  const named = exif.length > 6 && Buffer.from(exif.buffer, exif.byteOffset, 6).toString('latin1') === 'Exif\0\0';
  const tiff = named ? exif.subarray(6) : exif;
  try {
    const bytes = Buffer.from(tiff.buffer, tiff.byteOffset, tiff.byteLength);
    return ExifReader.load(bytes, {
      includeTags: { exif: wantedTags },
      includeUnknown: true,
    });
  } catch {
    // A block that cannot be read says nothing of the picture: it is taken in without time and camera.
    return null;
  }
};

/** @param exif  an EXIF block, or a whole TIFF file: both have the same structure */
export const cameraFacts = (exif: Uint8Array | null): CameraFacts => {
  const tags = exif && loadTags(exif);
  if (!tags) return { takenLocal: null, takenZoneOffsetMin: null, camera: null };
  const camera = cameraName(plain(tagText(tags, 'Make')), plain(tagText(tags, 'Model')));
  for (const [time, zone] of times) {
    const takenLocal = localTime(tagText(tags, time));
    if (takenLocal) return { takenLocal, takenZoneOffsetMin: zoneOffsetMin(tagText(tags, zone)), camera };
  }
  return { takenLocal: null, takenZoneOffsetMin: null, camera };
};

/** Whether a TIFF is a camera's raw file, whose first picture is only a small preview. @param tiff  the whole file */
export const isCameraRaw = (tiff: Uint8Array): boolean => {
  const tags = loadTags(tiff);
  if (!tags) return false;
  // TIFF 6.0, tag 254: bit 0 says 'a reduced-resolution version of another image in this file'.
  return tags[`undefined-${dngVersion}`] !== undefined || (Number(tags.SubfileType?.value ?? 0) & 1) === 1;
};
