import { AppError } from '../contract/errors.ts';
import {
  type ClockRange,
  type DepthRange,
  ends,
  faces,
  type Location,
  type LocationIndex,
  type LocationNode,
  type LocationPath,
  placeMarks,
  type Qualifiers,
  sides,
  views,
  zones,
} from './location.ts';

const longestText = 300;
const codePattern = /^(?=.*[A-Z])[A-Z0-9]+(?:-[A-Z0-9]+)*$/;
const millimetres = /^\d{1,5}(?:\.\d{1,2})?$/;
const hours = /^\d{1,2}(?:\.[05])?$/;

/** Carries a reason up to `parseLocation`, which alone knows the whole text. */
class Malformed extends Error {}

function parseIndex(text: string, node: string): LocationIndex {
  if (/^\d{1,4}$/.test(text)) return Number(text);
  if (/^[a-z]+$/.test(text)) return text;
  if (placeMarks.some((mark) => mark === text)) return text;
  if (text === '') throw new Malformed(`a number or word is missing after the point in '${node}'`);
  throw new Malformed(`'${text}' in '${node}' is neither a number, a side nor a word`);
}

function parseNode(text: string): LocationNode {
  const [code = '', ...indices] = text.split('.');
  if (code === '') throw new Malformed('a part is missing between two strokes');
  if (!codePattern.test(code)) throw new Malformed(`'${code}' is not the code of a part`);
  return { code, indices: indices.map((index) => parseIndex(index, text)) };
}

function parsePath(text: string): LocationPath {
  if (text === '') throw new Malformed('no part is named');
  return text.split('/').map(parseNode);
}

function parseClock(value: string): ClockRange {
  const [from = '', to = from, ...rest] = value.split('-');
  if (rest.length > 0 || !hours.test(from) || !hours.test(to))
    throw new Malformed(`'${value}' is not a clock position such as 2, 2.5 or 10-1`);
  return { fromHour: Number(from), toHour: Number(to) };
}

function parseDepth(value: string): DepthRange {
  const [from = '', to = from, ...rest] = value.split('-');
  if (rest.length > 0 || !millimetres.test(from) || !millimetres.test(to))
    throw new Malformed(`'${value}' is not a distance in millimetres such as 90 or 90-160`);
  if (Number(to) < Number(from)) throw new Malformed(`the distance ${value} mm runs backwards`);
  return { fromMm: Number(from), toMm: Number(to) };
}

function parseNear(value: string): NonNullable<Qualifiers['near']> {
  const [part = '', mm, ...rest] = value.split(':');
  if (rest.length > 0 || (mm !== undefined && !millimetres.test(mm)))
    throw new Malformed(`'${value}' does not say how many millimetres away`);
  return { part: parsePath(part), mm: mm === undefined ? null : Number(mm) };
}

function parseBetween(value: string): readonly [LocationPath, LocationPath] {
  const [first, second, ...rest] = value.split(',');
  if (first === undefined || second === undefined || rest.length > 0)
    throw new Malformed('between needs exactly two parts');
  return [parsePath(first), parsePath(second)];
}

function oneOf<Word extends string>(words: readonly Word[], value: string, what: string): Word {
  const found = words.find((word) => word === value);
  if (found === undefined) throw new Malformed(`'${value}' is no ${what} we know`);
  return found;
}

function parseQualifier(key: string, value: string): Qualifiers {
  switch (key) {
    case 'clk':
      return { clock: parseClock(value) };
    case 'z':
      return { depth: parseDepth(value) };
    case 'near':
      return { near: parseNear(value) };
    case 'btw':
      return { between: parseBetween(value) };
    case 'from':
      return { from: parsePath(value) };
    case 'to':
      return { to: parsePath(value) };
    case 'side':
      return { side: oneOf(sides, value, 'side') };
    case 'zone':
      return { zone: oneOf(zones, value, 'zone') };
    case 'end':
      return { end: oneOf(ends, value, 'end') };
    case 'face':
      return { face: oneOf(faces, value, 'face') };
    case 'view':
      return { view: oneOf(views, value, 'view') };
    default:
      throw new Malformed(`'${key}' does not say where on a part`);
  }
}

function parseQualifiers(text: string): Qualifiers {
  const keys = new Set<string>();
  let qualifiers: Qualifiers = {};
  for (const piece of text.split(';')) {
    const [key = '', value, ...rest] = piece.split('=');
    if (value === undefined || value === '' || rest.length > 0)
      throw new Malformed(`'${piece}' does not say where on the part`);
    if (keys.has(key)) throw new Malformed(`'${key}' is said twice`);
    keys.add(key);
    qualifiers = { ...qualifiers, ...parseQualifier(key, value) };
  }
  return qualifiers;
}

function readLocation(text: string): Location {
  const trimmed = text.trim();
  if (trimmed === '') throw new Malformed('the place is empty');
  if (trimmed.length > longestText) throw new Malformed('the place is too long');
  const [path = '', qualifiers, ...rest] = trimmed.split('@');
  if (rest.length > 0) throw new Malformed("'@' stands in it twice");
  return { path: parsePath(path), qualifiers: qualifiers === undefined ? {} : parseQualifiers(qualifiers) };
}

/** Places already read: a shop's machines name the same few hundred again and again. A location is never changed. */
const known = new Map<string, Location>();
const mostKnown = 10_000;

/**
 * Reads a place of the location grammar.
 *
 * @param text  a path, then optionally `@` and qualifiers: `ENG/LNR.4@side=THR;face=OUT;z=90-160`; at most 300 characters
 * @returns  the place as nodes with their indices, and typed qualifiers; nothing is held against a layout yet
 * @throws AppError 'location-malformed' with the text and a reason in the mechanic's words
 * Source: the handbook's compact location grammar (2.3).
 */
export function parseLocation(text: string): Location {
  const there = known.get(text);
  if (there !== undefined) return there;
  try {
    const location = readLocation(text);
    if (known.size >= mostKnown) known.clear();
    known.set(text, location);
    return location;
  } catch (error) {
    if (error instanceof Malformed)
      throw new AppError('location-malformed', { text, reason: error.message }, { cause: error });
    throw error;
  }
}
