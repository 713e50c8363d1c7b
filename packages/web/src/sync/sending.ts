/** Sends what the outbox holds: in order, in batches, until nothing is left or something stands in the way. */
import type { Answered, OutboxDatabase } from './database.ts';
import type { Receipt, Transport } from './transport.ts';
import type { NewRevision, Trouble } from './types.ts';

export interface Sender {
  readonly database: OutboxDatabase;
  readonly transport: Transport;
  readonly person: string;
  readonly now: () => number;
  readonly batchSize: number;
  readonly keepMs: number;
  readonly onSkew: (skewMs: number | null) => void;
  readonly onProgress: () => Promise<void>;
  readonly stopped: () => boolean;
}

/** Resolves with what stands in the way, or null when all was sent. */
export async function sendAll(sender: Sender): Promise<Trouble | null> {
  await sender.database.forgetBefore(sender.now() - sender.keepMs);
  return (await sendRevisions(sender)) ?? (await sendPhotos(sender));
}

async function sendRevisions(sender: Sender): Promise<Trouble | null> {
  const { database, transport, person, now } = sender;
  let size = sender.batchSize;
  for (let asked = false; !sender.stopped(); asked = true) {
    const batch = (await database.inState(person, 'pending', size)).map((entry) => entry.revision);
    const anchor = await database.lastAcknowledged(person);
    // Even with nothing to send the server is asked once whether it still has what it acknowledged.
    if (batch.length === 0 && (asked || anchor === null)) return null;
    const epoch = await database.epoch();
    const answer = await transport.offer({ sentAt: new Date(now()).toISOString(), person, epoch, anchor, revisions: batch });
    switch (answer.kind) {
      case 'received':
        if (!(await takeReceipt(sender, batch, epoch, answer.receipt))) return 'unreachable';
        break;
      case 'other-history':
        await database.offerAllAgain(answer.epoch);
        break;
      case 'refused':
        // One revision that the server cannot even read must not hold up the others: halve until it stands alone.
        if (batch.length === 0) return 'unreachable';
        if (batch.length > 1) size = Math.ceil(batch.length / 2);
        else await database.settle([{ revisionId: batch[0]!.revisionId, state: 'refused', problems: answer.problems }], now());
        break;
      default:
        return answer.kind;
    }
    await sender.onProgress();
  }
  return null;
}

/** Marks what the server answered for; false when it answered for nothing that it was asked. */
async function takeReceipt(
  { database, now, onSkew }: Sender,
  batch: readonly NewRevision[],
  epoch: string | null,
  receipt: Receipt,
): Promise<boolean> {
  if (receipt.epoch !== epoch) await database.keepEpoch(receipt.epoch);
  onSkew(receipt.skewMs);
  const sent = new Set(batch.map((revision) => revision.revisionId));
  const answers: Answered[] = [
    ...[...receipt.added, ...receipt.alreadyThere].map(
      (revisionId): Answered => ({ revisionId, state: 'acknowledged', problems: [] }),
    ),
    ...receipt.refused.map(({ revisionId, problems }): Answered => ({ revisionId, state: 'refused', problems })),
  ].filter(({ revisionId }) => sent.has(revisionId));
  await database.settle(answers, now());
  return answers.length > 0 || batch.length === 0;
}

async function sendPhotos({ database, transport, person, now, onProgress, stopped }: Sender): Promise<Trouble | null> {
  for (let photo = await database.nextPhoto(person); photo && !stopped(); photo = await database.nextPhoto(person)) {
    const answer = await transport.photo(photo);
    if (answer.kind === 'stored') await database.settlePhoto(photo, 'acknowledged', now());
    else if (answer.kind === 'refused') await database.settlePhoto(photo, 'refused', now());
    else return answer.kind === 'signed-out' ? answer.kind : 'unreachable';
    await onProgress();
  }
  return null;
}
