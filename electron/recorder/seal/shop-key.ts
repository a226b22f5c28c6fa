import { createHash, generateKeyPair, randomBytes } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import forge from 'node-forge';
import { writeWholeFile } from '../reports/write-file.ts';
import { plainLetters } from './plain-letters.ts';

/** The shop's own signing key: PKCS#12, lying with the data and backed up with it. */
export interface ShopKey {
  readonly p12: Buffer;
  /** SHA-256 of the certificate: the shop, as far as a seal can say. */
  readonly fingerprint: string;
}

const keyFile = (dataFolder: string): string => join(dataFolder, 'shop-key.p12');
const bits = 3072;
const years = 30;

const fingerprintOf = (certificate: forge.pki.Certificate): string =>
  createHash('sha256')
    .update(Buffer.from(forge.asn1.toDer(forge.pki.certificateToAsn1(certificate)).getBytes(), 'binary'))
    .digest('hex');

const certificateIn = (p12: Buffer, passphrase: string): forge.pki.Certificate => {
  const opened = forge.pkcs12.pkcs12FromAsn1(forge.asn1.fromDer(p12.toString('binary')), passphrase);
  const { certBag } = forge.pki.oids;
  const certificate = certBag === undefined ? undefined : opened.getBags({ bagType: certBag })[certBag]?.[0]?.cert;
  if (!certificate) throw new Error('the shop key holds no certificate');
  return certificate;
};

/** A self-signed X.509 certificate: it says that two reports are of one shop, not who the shop is. */
const make = async (shopName: string, atMs: number, passphrase: string): Promise<Buffer> => {
  const pair = await promisify(generateKeyPair)('rsa', {
    modulusLength: bits,
    publicKeyEncoding: { type: 'spki', format: 'pem' },
    privateKeyEncoding: { type: 'pkcs8', format: 'pem' },
  });
  const privateKey = forge.pki.privateKeyFromPem(pair.privateKey);
  const certificate = forge.pki.createCertificate();
  certificate.publicKey = forge.pki.publicKeyFromPem(pair.publicKey);
  // Positive, and never the same twice.
  certificate.serialNumber = `01${randomBytes(15).toString('hex')}`;
  certificate.validity.notBefore = new Date(atMs);
  certificate.validity.notAfter = new Date(atMs + years * 365.25 * 86_400_000);
  const name = [{ name: 'commonName', value: plainLetters(shopName) || 'A repair shop' }];
  certificate.setSubject(name);
  certificate.setIssuer(name);
  certificate.setExtensions([
    { name: 'basicConstraints', cA: false },
    { name: 'keyUsage', digitalSignature: true, nonRepudiation: true },
  ]);
  certificate.sign(privateKey, forge.md.sha256.create());
  const p12 = forge.pkcs12.toPkcs12Asn1(privateKey, [certificate], passphrase, { algorithm: 'aes256' });
  return Buffer.from(forge.asn1.toDer(p12).getBytes(), 'binary');
};

const existing = async (dataFolder: string): Promise<Buffer | null> => {
  try {
    return await readFile(keyFile(dataFolder));
  } catch (cause) {
    if ((cause as { code?: string }).code === 'ENOENT') return null;
    throw cause;
  }
};

/** The shop's key, made on first use and then kept. */
export const shopKey = async (
  dataFolder: string,
  { shopName, atMs, passphrase = '' }: { shopName: string; atMs: number; passphrase?: string },
): Promise<ShopKey> => {
  let p12 = await existing(dataFolder);
  if (!p12) {
    p12 = await make(shopName, atMs, passphrase);
    await writeWholeFile(keyFile(dataFolder), p12);
  }
  return { p12, fingerprint: fingerprintOf(certificateIn(p12, passphrase)) };
};

/** The fingerprint of a folder's key, or null where none was made yet. */
export const shopFingerprint = async (dataFolder: string, passphrase = ''): Promise<string | null> => {
  const p12 = await existing(dataFolder);
  return p12 && fingerprintOf(certificateIn(p12, passphrase));
};
