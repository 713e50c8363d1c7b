import { z } from 'zod';

const text = z.string().max(4_096);
const named = (id: string, description: string) => z.looseObject({}).meta({ id, description });

/** What a browser makes or finds a key by, and what it answers, are the standard's own; the library checks them. */
export const creationOptions = named('PassKeyCreationOptions', 'PublicKeyCredentialCreationOptionsJSON of Web Authentication.');
export const requestOptions = named('PassKeyRequestOptions', 'PublicKeyCredentialRequestOptionsJSON of Web Authentication.');

const answer = { id: text, rawId: text, type: z.literal('public-key'), clientExtensionResults: z.looseObject({}) };

export const registration = z
  .looseObject({
    ...answer,
    response: z.looseObject({
      clientDataJSON: text,
      attestationObject: z.string().max(32_768),
      transports: z
        .array(z.enum(['ble', 'cable', 'hybrid', 'internal', 'nfc', 'smart-card', 'usb']))
        .max(10)
        .optional(),
    }),
  })
  .meta({ id: 'PassKeyRegistration', description: 'RegistrationResponseJSON of Web Authentication.' });

export const assertion = z
  .looseObject({
    ...answer,
    response: z.looseObject({ clientDataJSON: text, authenticatorData: text, signature: text, userHandle: text.optional() }),
  })
  .meta({ id: 'PassKeyAssertion', description: 'AuthenticationResponseJSON of Web Authentication.' });

export const passKey = z
  .object({
    id: z.string(),
    name: z.string(),
    madeAt: z.iso.datetime(),
    usedAt: z.iso.datetime().nullable(),
  })
  .meta({ id: 'PassKey' });
