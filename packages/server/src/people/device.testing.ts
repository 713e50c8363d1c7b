/** A device that keeps one pass-key, as a phone would: made from Web Authentication's own formats, for tests. */
import { createHash, createSign, generateKeyPairSync, randomBytes } from 'node:crypto';

const sha256 = (data: string | Uint8Array) => createHash('sha256').update(data).digest();
const base64url = (data: Uint8Array | string) => Buffer.from(data).toString('base64url');

/** CBOR (RFC 8949) of what a credential needs: whole numbers, texts, bytes and maps. */
function cbor(value: number | string | Uint8Array | Map<number | string, unknown>): Buffer {
  const head = (major: number, n: number) => {
    if (n < 24) return Buffer.from([(major << 5) | n]);
    if (n < 256) return Buffer.from([(major << 5) | 24, n]);
    return Buffer.from([(major << 5) | 25, n >> 8, n & 255]);
  };
  if (typeof value === 'number') return value < 0 ? head(1, -1 - value) : head(0, value);
  if (typeof value === 'string') return Buffer.concat([head(3, Buffer.byteLength(value)), Buffer.from(value)]);
  if (value instanceof Uint8Array) return Buffer.concat([head(2, value.length), value]);
  const entries = [...value].flatMap(([key, each]) => [cbor(key), cbor(each as Parameters<typeof cbor>[0])]);
  return Buffer.concat([head(5, value.size), ...entries]);
}

/** Present, verified, and with a credential (section 6.1 of the standard). */
const PRESENT = 0x01;
const VERIFIED = 0x04;
const WITH_CREDENTIAL = 0x40;

/** @param origin the page it believes to stand on; @param counts false: it says 0 each time, as phones that share keys do */
export function device(origin: string, { counts = true } = {}) {
  const { privateKey, publicKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' });
  const { x, y } = publicKey.export({ format: 'jwk' });
  const coordinates = [x, y].map((each) => new Uint8Array(Buffer.from(each!, 'base64url')));
  // ES256 on P-256: RFC 9053, sections 2.1 and 7.1.1.
  const cose = cbor(
    new Map<number, unknown>([
      [1, 2],
      [3, -7],
      [-1, 1],
      [-2, coordinates[0]],
      [-3, coordinates[1]],
    ]),
  );
  const id = randomBytes(32);
  const rpIdHash = sha256(new URL(origin).hostname);
  let count = 0;
  const number = (value: number, bytes: number) => Buffer.from(value.toString(16).padStart(2 * bytes, '0'), 'hex');
  const head = (flags: number) => Buffer.concat([rpIdHash, Buffer.from([flags]), number(counts ? ++count : 0, 4)]);
  const client = (type: string, challenge: string) => JSON.stringify({ type, challenge, origin, crossOrigin: false });
  const answer = { id: base64url(id), rawId: base64url(id), type: 'public-key', clientExtensionResults: {} };

  return {
    id: answer.id,
    make({ challenge }: { challenge: string }) {
      const authData = Buffer.concat([
        head(PRESENT | VERIFIED | WITH_CREDENTIAL),
        Buffer.alloc(16),
        number(id.length, 2),
        id,
        cose,
      ]);
      const attestation = new Map<string, unknown>([
        ['fmt', 'none'],
        ['attStmt', new Map()],
        ['authData', new Uint8Array(authData)],
      ]);
      return {
        ...answer,
        response: {
          clientDataJSON: base64url(client('webauthn.create', challenge)),
          attestationObject: base64url(cbor(attestation)),
          transports: ['internal'],
        },
      };
    },
    sign({ challenge }: { challenge: string }, { verified = true } = {}) {
      const authData = head(PRESENT | (verified ? VERIFIED : 0));
      const clientData = client('webauthn.get', challenge);
      const signature = createSign('sha256')
        .update(Buffer.concat([authData, sha256(clientData)]))
        .sign(privateKey);
      return {
        ...answer,
        response: {
          clientDataJSON: base64url(clientData),
          authenticatorData: base64url(authData),
          signature: base64url(signature),
        },
      };
    },
    /** A copy of it would go on from where it stands. */
    rewind: () => {
      count -= 1;
    },
  };
}
