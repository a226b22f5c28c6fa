/** The typesetter writes one SVG with all pages under each other; its top-level elements stand at one indent of four. */
const topLevel = /^ {4}<(?!\/)/;
const topLevelEnd = /^ {4}<\//;
const pageEdge = /^ {4}<path [^>]*d="M 0 0v ([\d.]+) h ([\d.]+) /;
const reference = /(?:xlink:href="#|url\(#)([^")]+)/g;
const definition = /^ {8}<[a-zA-Z]+ id="([^"]+)"/;

interface Page {
  readonly widthPt: string;
  readonly heightPt: string;
  readonly lines: string[];
}

/** The definitions of glyphs and clips, by id, each with its own lines. */
function definitionsOf(lines: readonly string[]): Map<string, string> {
  const found = new Map<string, string>();
  let id: string | null = null;
  let open: string[] = [];
  const close = () => {
    if (id !== null) found.set(id, open.join('\n'));
    id = null;
    open = [];
  };
  for (const line of lines) {
    const named = definition.exec(line);
    if (named?.[1] !== undefined) {
      close();
      id = named[1];
    }
    if (id !== null && !topLevel.test(line) && !topLevelEnd.test(line)) open.push(line);
    if (topLevelEnd.test(line)) close();
  }
  close();
  return found;
}

function referencesIn(text: string): string[] {
  return [...text.matchAll(reference)].flatMap(([, id]) => id ?? []);
}

/** Glyphs refer to nothing further, but clips and patterns may. */
function neededBy(text: string, definitions: ReadonlyMap<string, string>): string[] {
  const needed = new Map<string, string>();
  const open = referencesIn(text);
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    const body = definitions.get(id);
    if (body === undefined || needed.has(id)) continue;
    needed.set(id, body);
    open.push(...referencesIn(body));
  }
  return [...needed.values()];
}

/** One SVG per page, each with only the glyphs that it uses. */
export function splitSvg(svg: string): string[] {
  const lines = svg.split('\n');
  const pages: Page[] = [];
  const definitionLines: string[] = [];
  let into: string[] | null = null;
  for (const line of lines.slice(1)) {
    const edge = pageEdge.exec(line);
    if (edge?.[1] !== undefined && edge[2] !== undefined) {
      const page: Page = { heightPt: edge[1], widthPt: edge[2], lines: [] };
      pages.push(page);
      into = page.lines;
      into.push(line);
    } else if (line.startsWith('    <defs')) {
      into = definitionLines;
      into.push(line);
    } else if (into !== null && line !== '</svg>') into.push(line);
  }
  const definitions = definitionsOf(definitionLines);
  return pages.map(({ widthPt, heightPt, lines: own }) => {
    // Every page but the first is moved down in the whole; alone it starts at its own top.
    const body = own.join('\n').replace(/^( {4}<g) transform="[^"]*">/m, '$1>');
    return [
      `<svg class="typst-doc" viewBox="0 0 ${widthPt} ${heightPt}" width="${widthPt}pt" height="${heightPt}pt" xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink">`,
      body,
      '    <defs>',
      ...neededBy(body, definitions),
      '    </defs>',
      '</svg>',
    ].join('\n');
  });
}
