import { AppError } from '../contract/errors.ts';
import { annotationContext, type MarkAnnotation } from './to-annotation.ts';

/** Many annotations as one document. Source: W3C Recommendation Web Annotation Data Model (23 February 2017), 5.1 and 5.2. */
export interface MarkCollection {
  readonly '@context': typeof annotationContext;
  readonly id: string;
  readonly type: 'AnnotationCollection';
  readonly label: string;
  readonly total: number;
  readonly first: {
    readonly id: string;
    readonly type: 'AnnotationPage';
    readonly partOf: string;
    readonly startIndex: 0;
    readonly items: readonly MarkAnnotation[];
  };
}

/** @param id  a UUID of our own: of the visit, or of the photo where the marks are of one alone */
export function collectionOf(id: string, label: string, items: readonly MarkAnnotation[]): MarkCollection {
  const name = `urn:uuid:${id}`;
  return {
    '@context': annotationContext,
    id: name,
    type: 'AnnotationCollection',
    label,
    total: items.length,
    first: { id: `${name}#marks`, type: 'AnnotationPage', partOf: name, startIndex: 0, items },
  };
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const typesOf = (value: Readonly<Record<string, unknown>>): readonly unknown[] =>
  Array.isArray(value.type) ? value.type : [value.type];

/** An annotation inside a collection may leave its context to the collection: JSON-LD hands it down. */
function inContext(item: unknown, context: unknown): unknown {
  return isObject(item) && !('@context' in item) && context !== undefined ? { '@context': context, ...item } : item;
}

/**
 * The annotations of a document: of a collection whose first page stands in it, of a page, of a plain list, or the one.
 * What they say is checked one by one by `fromAnnotation`.
 *
 * @throws AppError 'annotation-malformed' where there is none, or the collection's pages lie elsewhere
 */
export function annotationsIn(document: unknown): readonly unknown[] {
  const found = unfold(document);
  if (found.length === 0)
    throw new AppError('annotation-malformed', { clause: '3.1', reason: 'there is no annotation in it' });
  return found;
}

function unfold(document: unknown): readonly unknown[] {
  if (Array.isArray(document)) return document;
  if (!isObject(document))
    throw new AppError('annotation-malformed', { clause: '3.1', reason: 'it is no JSON object' });
  const types = typesOf(document);
  if (types.includes('AnnotationCollection')) {
    if (!isObject(document.first))
      throw new AppError('annotation-malformed', { clause: '5.1', reason: 'its pages lie in other files' });
    return unfold({ '@context': document['@context'], type: 'AnnotationPage', ...document.first });
  }
  if (types.includes('AnnotationPage')) {
    const items = Array.isArray(document.items) ? document.items : [];
    return items.map((item) => inContext(item, document['@context']));
  }
  return [document];
}
