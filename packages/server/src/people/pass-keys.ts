/** Signing in with a key that a device keeps (Web Authentication, W3C, level 3): asked for, checked, and kept by its public half. */
import type { Person } from '@duskwatch/core';
import type { AccountStore, PassKey } from '@duskwatch/store';
import type {
  AuthenticationResponseJSON,
  PublicKeyCredentialCreationOptionsJSON,
  PublicKeyCredentialRequestOptionsJSON,
  RegistrationResponseJSON,
} from '@simplewebauthn/server';

/** Where the browser says it is: the page's origin and the name that keys are bound to. */
export interface Site {
  readonly origin: string;
  readonly hostname: string;
  readonly programName: string;
}

export interface PassKeys {
  /** What the browser makes a new key from. */
  offer(person: Person, site: Site): Promise<PublicKeyCredentialCreationOptionsJSON>;
  /** Null when what came back is not what was asked for, or too late. */
  add(person: Person, site: Site, response: RegistrationResponseJSON, name: string): Promise<PassKey | null>;
  /** What the browser finds a key by; whose it will be nobody knows yet. */
  ask(site: Site): Promise<PublicKeyCredentialRequestOptionsJSON>;
  /** Whose key it is; null when the signature is not right, the key not known, or its owner is disabled. */
  signedBy(site: Site, response: AuthenticationResponseJSON): Promise<Person | null>;
}

/** A challenge is worth nothing after so long (W3C recommends 5 to 10 minutes), and nothing a second time. */
const CHALLENGE_MS = 5 * 60_000;
/** The oldest give way to newer ones: nobody fills the memory by asking. */
const CHALLENGES_KEPT = 10_000;

/** For signing in. */
const ANYBODY = 'anybody';

export function passKeysIn(store: AccountStore, now: () => Date): PassKeys {
  const challenges = challengeKeeper(now);
  // Loaded when somebody first comes with a key: a start without any does not wait for it.
  const library = () => import('@simplewebauthn/server');

  return {
    async offer(person, { hostname, programName }) {
      const { generateRegistrationOptions } = await library();
      const known = await store.passKeysOf(person.id);
      const options = await generateRegistrationOptions({
        rpName: programName,
        rpID: hostname,
        userName: person.name,
        userID: new TextEncoder().encode(person.id),
        attestationType: 'none',
        excludeCredentials: known.map(({ credentialId }) => ({ id: credentialId })),
        authenticatorSelection: { residentKey: 'required', userVerification: 'required' },
      });
      challenges.keep(options.challenge, person.id);
      return options;
    },
    async add(person, { origin, hostname }, response, name) {
      const { verifyRegistrationResponse } = await library();
      const verified = await verifyRegistrationResponse({
        response,
        expectedChallenge: (challenge) => challenges.take(challenge, person.id),
        expectedOrigin: origin,
        expectedRPID: hostname,
      }).catch(() => null);
      if (!verified?.verified) return null;
      const { credential } = verified.registrationInfo;
      const key: PassKey = {
        credentialId: credential.id,
        personId: person.id,
        publicKey: Buffer.from(credential.publicKey).toString('base64url'),
        counter: credential.counter,
        transports: credential.transports ?? [],
        name,
        madeAt: now().toISOString(),
        usedAt: null,
      };
      return (await store.addPassKey(key)) ? key : null;
    },
    async ask({ hostname }) {
      const { generateAuthenticationOptions } = await library();
      const options = await generateAuthenticationOptions({ rpID: hostname, userVerification: 'required' });
      challenges.keep(options.challenge, ANYBODY);
      return options;
    },
    async signedBy({ origin, hostname }, response) {
      const found = await store.passKey(response.id);
      if (!found) return null;
      const { verifyAuthenticationResponse } = await library();
      const { key, person } = found;
      const verified = await verifyAuthenticationResponse({
        response,
        expectedChallenge: (challenge) => challenges.take(challenge, ANYBODY),
        expectedOrigin: origin,
        expectedRPID: hostname,
        credential: {
          id: key.credentialId,
          publicKey: new Uint8Array(Buffer.from(key.publicKey, 'base64url')),
          counter: key.counter,
        },
      }).catch(() => null);
      if (!verified?.verified) return null;
      const { newCounter } = verified.authenticationInfo;
      return (await store.passKeyUsed(key.credentialId, newCounter, now().toISOString())) ? person : null;
    },
  };
}

function challengeKeeper(now: () => Date) {
  const kept = new Map<string, { readonly for: string; readonly atMs: number }>();
  return {
    keep(challenge: string, whom: string): void {
      kept.set(challenge, { for: whom, atMs: now().getTime() });
      if (kept.size > CHALLENGES_KEPT) kept.delete(kept.keys().next().value!);
    },
    /** Whether it was given out for this, not long ago; it is used up either way. */
    take(challenge: string, whom: string): boolean {
      const found = kept.get(challenge);
      kept.delete(challenge);
      return found?.for === whom && Math.abs(now().getTime() - found.atMs) < CHALLENGE_MS;
    },
  };
}
