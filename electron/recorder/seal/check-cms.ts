import { createHash, verify, X509Certificate } from 'node:crypto';
import forge from 'node-forge';

const { asn1 } = forge;
const { Class, Type } = asn1;
type Node = forge.asn1.Asn1;

const oids = {
  signedData: '1.2.840.113549.1.7.2',
  data: '1.2.840.113549.1.7.1',
  sha256: '2.16.840.1.101.3.4.2.1',
  rsa: '1.2.840.113549.1.1.1',
  messageDigest: '1.2.840.113549.1.9.4',
} as const;

const children = (node: Node | undefined): Node[] => (Array.isArray(node?.value) ? node.value : []);
const der = (node: Node): Buffer => Buffer.from(asn1.toDer(node).getBytes(), 'binary');
const sequence = (...values: Node[]): Node => asn1.create(Class.UNIVERSAL, Type.SEQUENCE, true, values);
const set = (...values: Node[]): Node => asn1.create(Class.UNIVERSAL, Type.SET, true, values);
const tagged = (tag: number, values: Node[]): Node => asn1.create(Class.CONTEXT_SPECIFIC, tag, true, values);
const oid = (value: string): Node => asn1.create(Class.UNIVERSAL, Type.OID, false, asn1.oidToDer(value).getBytes());
const one = (): Node => asn1.create(Class.UNIVERSAL, Type.INTEGER, false, String.fromCharCode(1));
const algorithm = (value: string): Node => sequence(oid(value), asn1.create(Class.UNIVERSAL, Type.NULL, false, ''));

interface Parts {
  readonly certificate: Node;
  readonly attributes: Node[];
  readonly signature: string;
}

const partsOf = (cms: Buffer): Parts => {
  const signedData = children(children(asn1.fromDer(cms.toString('binary')))[1])[0];
  const [, , , certificates, signers] = children(signedData);
  const [, , , attributes, , signature] = children(children(signers)[0]);
  const certificate = children(certificates)[0];
  if (!certificate || !attributes || typeof signature?.value !== 'string')
    throw new Error('not the signature we write');
  return { certificate, attributes: children(attributes), signature: signature.value };
};

/** The one form in which this program writes a signature, made again from what is proven of it. */
const rebuilt = ({ certificate, attributes, signature }: Parts): Buffer => {
  const tbs = children(children(certificate)[0]);
  const [serial, issuer] = [tbs[1], tbs[3]];
  if (!serial || !issuer) throw new Error('no certificate');
  const signer = sequence(
    one(),
    sequence(issuer, serial),
    algorithm(oids.sha256),
    tagged(0, attributes),
    algorithm(oids.rsa),
    asn1.create(Class.UNIVERSAL, Type.OCTETSTRING, false, signature),
  );
  const signedData = sequence(
    one(),
    set(algorithm(oids.sha256)),
    sequence(oid(oids.data)),
    tagged(0, [certificate]),
    set(signer),
  );
  return der(sequence(oid(oids.signedData), tagged(0, [signedData])));
};

const messageDigestIn = (attributes: readonly Node[]): string | null => {
  for (const attribute of attributes) {
    const [type, values] = children(attribute);
    const value = children(values)[0]?.value;
    if (
      type &&
      typeof type.value === 'string' &&
      asn1.derToOid(type.value) === oids.messageDigest &&
      typeof value === 'string'
    ) {
      return Buffer.from(value, 'binary').toString('hex');
    }
  }
  return null;
};

/**
 * Whether a CMS signature is a whole and true one over these bytes, and by whose certificate. Everything in it is either
 * signed, or has only one form: a changed byte anywhere is found.
 *
 * @returns the SHA-256 fingerprint of the signer's certificate, or null when anything is off
 */
export const checkCms = (cms: Buffer, covered: Buffer): string | null => {
  try {
    const parts = partsOf(cms);
    if (!rebuilt(parts).equals(cms)) return null;
    const certificateDer = der(parts.certificate);
    const certificate = new X509Certificate(certificateDer);
    const [tbs, outerAlgorithm] = children(parts.certificate);
    const innerAlgorithm = children(tbs)[2];
    // The certificate is the shop's own: it proves itself, and names its algorithm twice in the same words.
    if (!outerAlgorithm || !innerAlgorithm || !der(outerAlgorithm).equals(der(innerAlgorithm))) return null;
    if (!certificate.verify(certificate.publicKey)) return null;
    if (messageDigestIn(parts.attributes) !== createHash('sha256').update(covered).digest('hex')) return null;
    const signed = der(set(...parts.attributes));
    if (!verify('RSA-SHA256', signed, certificate.publicKey, Buffer.from(parts.signature, 'binary'))) return null;
    return createHash('sha256').update(certificateDer).digest('hex');
  } catch {
    // Whatever cannot even be read is not the signature that was made.
    return null;
  }
};
