/** Ids of inputs that a result needs: of each inner list any one. */
type Needs = readonly (readonly string[])[];

/**
 * The same needs as ways to fill them: each a set of inputs that is enough, none with one too many. `[a or b] and [a or c]`
 * is `a`, or `b and c`: how a person reads it.
 */
export function waysToFill(needs: Needs): readonly (readonly string[])[] {
  const all = needs.reduce<readonly (readonly string[])[]>(
    (ways, group) => ways.flatMap((way) => group.map((id) => (way.includes(id) ? way : [...way, id]))),
    [[]],
  );
  const isWithin = (some: readonly string[], way: readonly string[]) => some.every((id) => way.includes(id));
  return all.filter(
    (way, at) => !all.some((other, index) => isWithin(other, way) && (other.length < way.length || index < at)),
  );
}

/** What is still to be typed, by way: where some ways are begun, only those. */
export function waysLeft(needs: Needs, has: (id: string) => boolean): readonly (readonly string[])[] {
  const ways = waysToFill(needs);
  const begun = ways.filter((way) => way.some(has));
  return (begun.length > 0 ? begun : ways).map((way) => way.filter((id) => !has(id)));
}
