import type { Size } from '../geometry/spaces.ts';
import type { Mark } from '../model/mark.ts';
import { contentName } from './content-name.ts';
import { svgOf } from './svg-shape.ts';

export const annotationContext = 'http://www.w3.org/ns/anno.jsonld';

/** What of a mark has no word in the Recommendation's vocabulary stands under one JSON term of our own. */
const ownTerms = { mark: { '@id': 'urn:witness-mark:mark', '@type': '@json' } } as const;

const motivations = {
  finding: 'describing',
  note: 'commenting',
  calibration: 'classifying',
  matching: 'linking',
} as const;

export interface TextualBody {
  readonly type: 'TextualBody';
  readonly value: string;
  readonly format: 'text/plain';
  readonly purpose: 'commenting' | 'describing';
}

export interface MarkAnnotation {
  readonly '@context': readonly [typeof annotationContext, typeof ownTerms];
  readonly id: string;
  readonly type: 'Annotation';
  readonly motivation: (typeof motivations)[keyof typeof motivations];
  readonly body?: readonly TextualBody[];
  readonly target: {
    readonly type: 'SpecificResource';
    readonly source: string;
    readonly selector: { readonly type: 'SvgSelector'; readonly value: string };
  };
  readonly mark: Omit<Mark, 'id' | 'points' | 'note'>;
}

export interface AnnotatedPhoto extends Size {
  /** SHA-256 of the original's bytes. Width and height are those of the upright picture. */
  readonly digest: string;
}

/**
 * One mark as a Web Annotation. Its shape is an SvgSelector in pixels of the upright original.
 *
 * @param said  the finding's own line, where the mark belongs to one
 * Source: W3C Recommendation Web Annotation Data Model (23 February 2017), 3.1, 3.2.4, 3.3.5, 4 and 4.2.7.
 */
export function toAnnotation(mark: Mark, photo: AnnotatedPhoto, said = ''): MarkAnnotation {
  const { id, points, note, ...rest } = mark;
  const body: TextualBody[] = [
    ...(said === ''
      ? []
      : [{ type: 'TextualBody', value: said, format: 'text/plain', purpose: 'describing' } as const]),
    ...(note === ''
      ? []
      : [{ type: 'TextualBody', value: note, format: 'text/plain', purpose: 'commenting' } as const]),
  ];
  return {
    '@context': [annotationContext, ownTerms],
    id: `urn:uuid:${id}`,
    type: 'Annotation',
    motivation: motivations[mark.role],
    ...(body.length > 0 ? { body } : {}),
    target: {
      type: 'SpecificResource',
      source: contentName(photo.digest),
      selector: { type: 'SvgSelector', value: svgOf(mark.shape, points, photo) },
    },
    mark: rest,
  };
}
