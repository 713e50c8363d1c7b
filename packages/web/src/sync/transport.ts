/** One exchange with the server, every way it can end told apart. */
import type { Problem } from '@duskwatch/core';
import type { KeptPhoto } from './database.ts';
import type { NewRevision } from './types.ts';

interface Offer {
  readonly sentAt: string;
  /** Who is believed to be signed in; the server refuses another, so that nobody's words get another's name. */
  readonly person: string;
  /** The server's history as this machine knew it; null before the first answer. */
  readonly epoch: string | null;
  /** The newest revision the server said it has; null when none is kept. */
  readonly anchor: string | null;
  readonly revisions: readonly NewRevision[];
}

export interface Receipt {
  readonly epoch: string;
  readonly skewMs: number | null;
  readonly added: readonly string[];
  readonly alreadyThere: readonly string[];
  readonly refused: readonly { readonly revisionId: string; readonly problems: readonly Problem[] }[];
}

type Answer =
  | { readonly kind: 'received'; readonly receipt: Receipt }
  /** No answer, half an answer, or one that does not come from Duskwatch: nobody knows what arrived. */
  | { readonly kind: 'unreachable' }
  | { readonly kind: 'signed-out' }
  | { readonly kind: 'other-person' }
  /** The server lost what it acknowledged, and took nothing of the offer. */
  | { readonly kind: 'other-history'; readonly epoch: string }
  /** The request as a whole was refused, and nothing of it was taken. */
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] };

export interface Transport {
  offer(offer: Offer): Promise<Answer>;
  photo(photo: KeptPhoto): Promise<Answer | { readonly kind: 'stored' }>;
}

const TOO_LARGE: Problem = {
  where: {},
  got: 'more than the server takes at once',
  expected: 'less',
  fix: 'Shorten the note, or ask whoever runs the server to raise its limit.',
  fault: { kind: 'too-large' },
};

type Fetch = (url: string, init: RequestInit) => Promise<Response>;

/** Answers to what was sent. Any other may come from a proxy, a rate limit or a wrong set-up, and pass. */
const ABOUT_WHAT_WAS_SENT = new Set([400, 413, 415, 422]);

export function transportOver(fetch: Fetch, timeoutMs: number): Transport {
  async function post(url: string, type: string, content: BodyInit): Promise<{ status: number; body: unknown } | null> {
    const abort = new AbortController();
    const timer = setTimeout(() => abort.abort(), timeoutMs);
    try {
      const response = await fetch(url, {
        method: 'POST',
        headers: { 'content-type': type, accept: 'application/json' },
        body: content,
        credentials: 'same-origin',
        redirect: 'error',
        signal: abort.signal,
      });
      const said = response.json() as Promise<unknown>;
      return { status: response.status, body: response.ok ? await said : await said.catch(() => null) };
    } catch {
      return null;
    } finally {
      clearTimeout(timer);
    }
  }

  const unhappy = (answer: { status: number; body: unknown } | null): Answer => {
    if (answer === null) return { kind: 'unreachable' };
    const said = answer.body as { problems?: readonly Problem[]; reason?: string; epoch?: string } | null;
    if (answer.status === 401) return { kind: 'signed-out' };
    if (answer.status === 409 && said?.reason === 'other-person') return { kind: 'other-person' };
    if (answer.status === 409 && said?.reason === 'other-history' && said.epoch) return { kind: said.reason, epoch: said.epoch };
    if (Array.isArray(said?.problems) && ABOUT_WHAT_WAS_SENT.has(answer.status)) {
      return { kind: 'refused', problems: said.problems };
    }
    // A proxy's own limit on size: smaller pieces may pass, and the same piece never will.
    return answer.status === 413 ? { kind: 'refused', problems: [TOO_LARGE] } : { kind: 'unreachable' };
  };

  return {
    async offer(offer) {
      const answer = await post('/api/revisions', 'application/json', JSON.stringify(offer));
      if (answer?.status === 200 && isReceipt(answer.body)) return { kind: 'received', receipt: answer.body };
      return answer?.status === 200 ? { kind: 'unreachable' } : unhappy(answer);
    },
    async photo({ photo, type, bytes }) {
      const answer = await post('/api/photos', type, bytes);
      const stored = answer?.status === 200 && (answer.body as { photo?: string } | null)?.photo === photo;
      if (stored) return { kind: 'stored' };
      return answer?.status === 200 ? { kind: 'unreachable' } : unhappy(answer);
    },
  };
}

/** A network that asks for a sign-in of its own answers everything with a page and 200. */
function isReceipt(body: unknown): body is Receipt {
  const said = body as Partial<Receipt> | null;
  return typeof said?.epoch === 'string' && [said.added, said.alreadyThere, said.refused].every(Array.isArray);
}
