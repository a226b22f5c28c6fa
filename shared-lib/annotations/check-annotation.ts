/** A rule of the Recommendation that an annotation breaks. */
export interface BrokenRule {
  /** Section of the Web Annotation Data Model, W3C Recommendation of 23 February 2017. */
  readonly clause: string;
  readonly reason: string;
}

type Json = Readonly<Record<string, unknown>>;
const isObject = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const listOf = (value: unknown): readonly unknown[] =>
  value === undefined ? [] : Array.isArray(value) ? value : [value];
/** An IRI with a scheme: RFC 3987 in outline. */
const isIri = (value: unknown): value is string =>
  typeof value === 'string' && /^[A-Za-z][A-Za-z0-9+.-]*:[^\s<>"{}|\\^`]+$/.test(value);
const hasType = (thing: Json, name: string): boolean => listOf(thing.type).includes(name);

const anno = 'http://www.w3.org/ns/anno.jsonld';
const selectorTypes = [
  'FragmentSelector',
  'CssSelector',
  'XPathSelector',
  'TextQuoteSelector',
  'TextPositionSelector',
  'DataPositionSelector',
  'SvgSelector',
  'RangeSelector',
];
const motivations = [
  'assessing',
  'bookmarking',
  'classifying',
  'commenting',
  'describing',
  'editing',
  'highlighting',
  'identifying',
  'linking',
  'moderating',
  'questioning',
  'replying',
  'tagging',
];

/**
 * Holds an annotation against the MUSTs of the Recommendation that concern what marks use: annotation, bodies, targets,
 * specific resources and selectors.
 */
export function checkAnnotation(value: unknown): BrokenRule[] {
  const broken: BrokenRule[] = [];
  const must = (holds: boolean, clause: string, reason: string): void => {
    if (!holds) broken.push({ clause, reason });
  };
  if (!isObject(value)) return [{ clause: '3.1', reason: 'it is no JSON object' }];
  const contexts = listOf(value['@context']);
  must(contexts.includes(anno), '3.1', `@context has to name ${anno}`);
  must(!(Array.isArray(value['@context']) && contexts.length === 1), '3.1', 'a single @context has to be a string');
  must(isIri(value.id), '3.1', 'it has to have exactly one id, an IRI');
  must(hasType(value, 'Annotation'), '3.1', 'its type has to be Annotation');
  must(listOf(value.target).length > 0, '3.1', 'it has to have a target');
  must(!('body' in value && 'bodyValue' in value), '3.2.5', 'body and bodyValue exclude each other');
  must(!('bodyValue' in value) || typeof value.bodyValue === 'string', '3.2.5', 'bodyValue has to be one string');
  for (const body of listOf(value.body)) checkBody(body, must);
  for (const target of listOf(value.target)) checkTarget(target, must);
  for (const moment of [value.created, value.modified, value.generated]) {
    must(
      moment === undefined ||
        (typeof moment === 'string' && /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)$/.test(moment)),
      '3.3.1',
      'a moment has to be an xsd:dateTime with its zone',
    );
  }
  for (const motivation of listOf(value.motivation)) {
    must(
      motivations.includes(String(motivation)) || isIri(motivation),
      '3.3.5',
      'a motivation has to be a known one or an IRI',
    );
  }
  return broken;
}

type Must = (holds: boolean, clause: string, reason: string) => void;

function checkBody(body: unknown, must: Must): void {
  if (!isObject(body)) {
    must(isIri(body), '3.2.1', 'a body that is no object has to be an IRI');
  } else if (hasType(body, 'TextualBody')) {
    must(typeof body.value === 'string', '3.2.4', 'a TextualBody has to have exactly one value, a string');
  } else if (body.type === undefined && body.value === undefined) {
    must(isIri(body.id) || isIri(body.source), '3.2.1', 'a body has to have an id or a source');
  }
}

function checkTarget(target: unknown, must: Must): void {
  if (!isObject(target)) {
    must(isIri(target), '3.2.1', 'a target that is no object has to be an IRI');
    return;
  }
  if (!('selector' in target) && !hasType(target, 'SpecificResource')) {
    must(isIri(target.id) || isIri(target.source), '3.2.1', 'a target has to have an id');
    return;
  }
  const { source } = target;
  must(
    isIri(source) || (isObject(source) && isIri(source.id)),
    '4',
    'a specific resource has to have exactly one source',
  );
  for (const selector of listOf(target.selector)) {
    if (!isObject(selector)) {
      must(isIri(selector), '4.2', 'a selector that is no object has to be an IRI');
      continue;
    }
    must(
      typeof selector.type === 'string' && selectorTypes.includes(selector.type),
      '4.2',
      'a selector has to have exactly one known type',
    );
    if (selector.type === 'FragmentSelector')
      must(typeof selector.value === 'string', '4.2.1', 'a FragmentSelector has to have exactly one value, a string');
    if (selector.type === 'SvgSelector') {
      const hasValue = typeof selector.value === 'string';
      must(hasValue !== isIri(selector.id), '4.2.7', 'an SvgSelector has to have either a value or an id');
    }
  }
}
