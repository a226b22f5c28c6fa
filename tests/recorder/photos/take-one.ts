import { writeSync } from 'node:fs';
import { Decoder } from '../../../electron/recorder/photos/decoder.ts';
import { PhotoStore } from '../../../electron/recorder/photos/store.ts';
import { takeIn } from '../../../electron/recorder/photos/take-in.ts';

/** Takes one photo into a data folder and says so: to be run under a system-call trace. */
const [dataFolder = '', source = ''] = process.argv.slice(2);
const decoder = new Decoder();
const { original } = await takeIn({ store: new PhotoStore(dataFolder), decoder }, source, 'traced.jpg');
writeSync(1, `taken in ${original.digest}\n`);
decoder.close();
