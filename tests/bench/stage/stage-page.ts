import { existsSync } from 'node:fs';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import { type Browser, chromium } from '@playwright/test';
import react from '@vitejs/plugin-react';
import sharp from 'sharp';
import { build } from 'vite';

const types: Record<string, string> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.jpg': 'image/jpeg',
  '.ttf': 'font/ttf',
};

export interface StagePageServer {
  readonly address: string;
  /** Where photos are put as NAME.jpg and NAME.screen.jpg. */
  readonly folder: string;
  close(): Promise<void>;
}

/** Builds the page and serves it with photos and their regions from a folder of its own. */
export async function serveStagePage(): Promise<StagePageServer> {
  const folder = await mkdtemp(join(tmpdir(), 'stage-page-'));
  const built = join(folder, 'built');
  await build({
    root: join(import.meta.dirname, 'page'),
    configFile: false,
    plugins: [react()],
    logLevel: 'error',
    build: { outDir: built, target: 'chrome130', emptyOutDir: true, chunkSizeWarningLimit: 2000 },
  });
  const server = createServer((request, response) => {
    const url = new URL(request.url ?? '/', 'http://localhost');
    answer(url, folder, built).then(
      ({ body, type }) => response.writeHead(200, { 'content-type': type }).end(body),
      () => response.writeHead(404).end(),
    );
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const port = server.address();
  return {
    address: `http://127.0.0.1:${typeof port === 'object' && port ? port.port : 0}`,
    folder,
    async close() {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
      await rm(folder, { recursive: true, force: true });
    },
  };
}

async function answer(url: URL, folder: string, built: string): Promise<{ body: Buffer; type: string }> {
  if (url.pathname === '/region') return { body: await region(url, folder), type: 'image/jpeg' };
  const path = url.pathname.startsWith('/photos/')
    ? join(folder, url.pathname.slice('/photos/'.length))
    : join(built, url.pathname === '/' ? 'index.html' : url.pathname);
  return { body: await readFile(path), type: types[extname(path)] ?? 'application/octet-stream' };
}

/** A part of the upright original, as the recorder would cut it. */
async function region(url: URL, folder: string): Promise<Buffer> {
  const number = (name: string) => Number(url.searchParams.get(name));
  const name = (url.searchParams.get('photo') ?? '').replace('/photos/', '').replace('.screen.jpg', '.jpg');
  const edge = number('edge');
  return sharp(join(folder, name), { limitInputPixels: false })
    .extract({ left: number('x'), top: number('y'), width: number('width'), height: number('height') })
    .resize({ width: edge, height: edge, fit: 'inside', withoutEnlargement: true })
    .jpeg({ quality: 85 })
    .toBuffer();
}

/** A picture with enough in it that scaling and moving it costs what a photo costs. */
export async function writePhoto(folder: string, name: string, width: number, height: number): Promise<void> {
  const tile = await sharp({
    create: {
      width: 512,
      height: 512,
      channels: 3,
      background: '#77706a',
      noise: { type: 'gaussian', mean: 118, sigma: 34 },
    },
  })
    .blur(1.2)
    .png()
    .toBuffer();
  const file = join(folder, `${name}.jpg`);
  await sharp({ create: { width, height, channels: 3, background: '#77706a' }, limitInputPixels: false })
    .composite([{ input: tile, tile: true }])
    .jpeg({ quality: 80 })
    .toFile(file);
  await writeScreenPicture(folder, name);
}

export async function writeScreenPicture(folder: string, name: string): Promise<void> {
  await sharp(join(folder, `${name}.jpg`), { limitInputPixels: false })
    .autoOrient()
    .resize({ width: 2048, height: 2048, fit: 'inside', withoutEnlargement: true })
    .jpeg({ quality: 82 })
    .toFile(join(folder, `${name}.screen.jpg`));
}

const chromiums = [
  process.env.CHROMIUM ?? '',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
];

/** Null where this machine has no browser or no display to show one on. */
export async function openBrowser(): Promise<Browser | null> {
  const executablePath = chromiums.find((path) => path !== '' && existsSync(path));
  if (executablePath === undefined || !process.env.DISPLAY) return null;
  return chromium.launch({ executablePath, headless: false, args: ['--no-sandbox'] });
}
