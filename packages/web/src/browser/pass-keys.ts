/** Pass-keys as the browser makes and finds them (Web Authentication). */
import type { PublicKeyCredentialCreationOptionsJSON, PublicKeyCredentialRequestOptionsJSON } from '@simplewebauthn/browser';

/** A key belongs to a name: there is none at a bare number, and none over plain http but on this machine. */
export const hasPassKeys = (): boolean =>
  isSecureContext && 'PublicKeyCredential' in globalThis && !/^[\d.]+$|:/.test(location.hostname);

/** Whoever sits here said no, or let the time run out. */
export class PassKeyDeclined extends Error {}

// The code comes when somebody asks for it.
const library = () => import('@simplewebauthn/browser');

export const makePassKey = (optionsJSON: PublicKeyCredentialCreationOptionsJSON) =>
  asked(async () => (await library()).startRegistration({ optionsJSON }));

export const findPassKey = (optionsJSON: PublicKeyCredentialRequestOptionsJSON) =>
  asked(async () => (await library()).startAuthentication({ optionsJSON }));

async function asked<T>(ask: () => Promise<T>): Promise<T> {
  try {
    return await ask();
  } catch (error) {
    // Both are said of a person's no as well as of a key that is there already; neither tells more to who asks.
    if (error instanceof Error && /^(NotAllowed|InvalidState|Abort)Error$/.test(error.name))
      throw new PassKeyDeclined(error.name, { cause: error });
    throw error;
  }
}
