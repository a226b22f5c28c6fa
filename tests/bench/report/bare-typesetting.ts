/** A child of the bench: the typesetter, the fonts of the program, and a template of a few lines. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';

const [folder = '', findings = '60', photosEach = '2'] = process.argv.slice(2);
const assets = join(import.meta.dirname, '../../../assets');
const words =
  'seen when the liner was drawn, and looked at again under a stronger light; it grows until the coolant reaches the oil. ';

/** The screen-sized pictures of the record, as ours prints them. */
const pictures = readdirSync(join(folder, 'record'), { recursive: true, encoding: 'utf8' })
  .filter((name) => /screen.*\.jpg$/.test(name))
  .map((name) => join(folder, 'record', name));

const source = Array.from({ length: Number(findings) }, (_, index) => {
  const own = Array.from({ length: Number(photosEach) }, (_unused, each) => index * Number(photosEach) + each);
  const images = own.map((each) => `#image("/${each}.jpg", width: 80mm, alt: "photo ${each}")`).join('\n');
  return `#pagebreak(weak: true)\n= Finding ${index + 1}\n${words.repeat(6)}\n\n${images}\n`;
}).join('\n');

/** Made with the first report: what it takes belongs to the first. */
let kept: NodeCompiler | undefined;
const workspace = join(folder, 'bare');

const typeset = (): number => {
  const began = performance.now();
  kept ??= NodeCompiler.create({ workspace, fontArgs: [{ fontPaths: [join(assets, 'fonts')] }] });
  const compiler = kept;
  for (const [index, path] of pictures.entries())
    compiler.mapShadow(join(workspace, `${index}.jpg`), readFileSync(path));
  const { result } = compiler.compile({ mainFileContent: `#set text(font: "Barlow")\n${source}`, resetRead: true });
  if (result === null) throw new Error('the bare report was not typeset');
  compiler.pdf(result);
  compiler.resetShadow();
  compiler.evictCache(0);
  return performance.now() - began;
};

if (pictures.length < Number(findings) * Number(photosEach)) throw new Error(`only ${pictures.length} pictures`);
process.on('message', () => process.send?.(typeset()));
process.send?.(0);
