/** The round on this phone: what is kept, what is written, and the few things that can be done. Needs no server. */
import {
  type IsoDay,
  type Role,
  type RoundStop,
  type RoundTrap,
  type RoundView,
  roundLater,
  type SkipReason,
} from '@duskwatch/core';
import { ApiError, type ApiFailure } from '../../api/client.ts';
import { asOfferedNow, checkFrom, type UnsavedCheck } from '../../shared/check/unsaved-check.ts';
import { openOutbox, THIS_MACHINE } from '../../sync/outbox.ts';
import type { Outbox, OutboxEntry, OutboxStatus } from '../../sync/types.ts';
import { type Clock, localDay, trueMs } from './clock.ts';
import { type Kept, type KeptDraft, type KeptScouting, type KeptView, openKept } from './kept.ts';
import { ofRound, type Place, planned, planOrder, type Round, visitNumber, withTrap } from './progress.ts';
import { askForFields, askSession } from './server.ts';
import type { Walk } from './walk.ts';
import {
  ofKind,
  onDay,
  type PlannedRevisions,
  revisionsBack,
  revisionsFor,
  standing,
  type WantedRecord,
  type Written,
  writtenRecords,
} from './written.ts';

export interface DeviceState {
  readonly opened: boolean;
  readonly kept: KeptView | null;
  readonly scouting: KeptScouting | null;
  /** Samples under way. */
  readonly walks: readonly Walk[];
  /** What was put in at traps and not saved. */
  readonly drafts: Readonly<Record<string, KeptDraft>>;
  /** What this phone's clock was off by when the server last answered; null: not known. */
  readonly clock: Clock | null;
  readonly round: Round | null;
  readonly entries: readonly OutboxEntry[];
  readonly written: readonly Written[];
  readonly status: OutboxStatus | null;
  readonly asking: boolean;
  /** What the person may do, as the server last said; null: not known. */
  readonly role: Role | null;
  /** Why the last question to the server had no answer. */
  readonly failure: ApiFailure | 'signed-out' | null;
}

const BEFORE: DeviceState = {
  opened: false,
  kept: null,
  scouting: null,
  walks: [],
  drafts: {},
  clock: null,
  round: null,
  entries: [],
  written: [],
  status: null,
  asking: false,
  role: null,
  failure: null,
};

/** The day to write on checks, by the true time as far as it is known; a clock that is days behind is not believed over the server. */
export const today = ({ pinnedOn, view }: KeptView | KeptScouting, clock: Clock | null): IsoDay =>
  pinnedOn ?? [localDay(trueMs(clock, Date.now())), view.on].sort().at(-1)!;

export class RoundDevice {
  private state: DeviceState = BEFORE;
  private readonly listeners = new Set<() => void>();
  private readonly keptDatabase: Promise<Kept> = openKept();
  private outbox: Outbox | null = null;
  private person: string = THIS_MACHINE;

  snapshot = (): DeviceState => this.state;

  subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => void this.listeners.delete(listener);
  };

  /** First what is kept, which is enough to work; then the server is asked. */
  async open(): Promise<void> {
    const kept = await this.keptDatabase;
    await this.openFor((await kept.get('person')) ?? THIS_MACHINE);
    this.tell({ opened: true });
    addEventListener('online', () => void this.refresh());
    await this.refresh();
  }

  /** Reads the round from the server; one that is under way keeps the view it began with. */
  async refresh(): Promise<void> {
    if (this.state.asking) return;
    this.tell({ asking: true });
    try {
      const session = await askSession();
      if (session.kind === 'signed-out') return this.tell({ asking: false, failure: 'signed-out' });
      await this.openFor(session.id);
      await (await this.keptDatabase).set('role', session.role);
      this.tell({ role: session.role });
      void this.outbox!.sync();
      await this.readFields(session.id);
      this.tell({ asking: false, failure: null });
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      this.tell({ asking: false, failure: error.kind });
    }
  }

  private async readFields(person: string): Promise<void> {
    const fetchedMs = Date.now();
    const { pinnedOn, round, scouting, clock } = await askForFields(this.state.round === null);
    const database = await this.keptDatabase;
    if (clock) {
      await database.set('clock', clock);
      this.tell({ clock });
    }
    if (scouting.status === 'fulfilled') {
      const fresh: KeptScouting = { view: scouting.value, pinnedOn, person, fetchedMs };
      await database.set('scouting', fresh);
      this.tell({ scouting: fresh });
    }
    if (round?.status === 'fulfilled') {
      const fresh: KeptView = { view: round.value, pinnedOn, person, fetchedMs };
      await database.set('view', fresh);
      this.tell({ kept: fresh });
    }
    for (const answer of [round, scouting]) if (answer?.status === 'rejected') throw answer.reason;
  }

  async start(all: boolean, from: string | null, view: RoundView): Promise<void> {
    await this.begin(view, planOrder(view, all, from).order, { all });
  }

  /** Past the stations of a plan, in its order, and every trap there. */
  async startPlanned(stations: readonly string[], view: RoundView): Promise<void> {
    const stops = planned(view, stations);
    const asked = stops.flatMap(({ traps }) => traps.map(({ trapId }) => trapId));
    await this.begin(
      view,
      stops.map(({ station }) => station),
      { all: false, asked },
    );
  }

  /** For somebody who stands before a trap: it joins the round under way, or begins one past what is due. */
  async visit(place: Place, view: RoundView): Promise<void> {
    const { round } = this.state;
    if (round) return this.keepRound(withTrap(round, place));
    const isDue = view.stops.some((stop) => stop.due && stop.station === place.station);
    const { order } = planOrder(view, false, isDue ? place.station : null);
    await this.begin(view, isDue ? order : [place.station, ...order], { all: false, asked: [place.trapId] });
  }

  private async begin(view: RoundView, order: readonly string[], what: Pick<Round, 'all' | 'asked'>): Promise<void> {
    const afterPlace = this.state.entries.at(-1)?.place ?? 0;
    await this.keepRound({ startedOn: view.on, afterPlace, order, ...what });
    // The browser may clear what a page keeps when the disk is full, unless it is asked not to.
    void navigator.storage?.persist?.();
  }

  async end(): Promise<void> {
    await this.keepRound(null);
    await this.refresh();
  }

  /** Says of traps that they were passed by, and why; gives how to take it back. */
  async skip(trapIds: readonly string[], reason: SkipReason): Promise<() => Promise<void>> {
    const skippedOn = today(this.state.kept!, this.state.clock);
    return this.say(trapIds.map((trapId) => ({ kind: 'skips', value: { trapId, skippedOn, reason, note: null } })));
  }

  /** Widens a round under way to every station; the new ones come after those it has. */
  async addAll(view: RoundView): Promise<void> {
    const { round } = this.state;
    if (!round) return;
    const { order } = planOrder(view, true, null);
    await this.keepRound({
      ...round,
      all: true,
      order: [...round.order, ...order.filter((each) => !round.order.includes(each))],
    });
  }

  /** Asked of what is on disk, because another page of this browser may have begun a round. */
  isBetweenRounds = async (): Promise<boolean> => (await (await this.keptDatabase).get('round')) === undefined;

  /** What was put in at a trap today and not saved, also before the battery died; null when nothing was. */
  draft(trapId: string, on: IsoDay): UnsavedCheck | null {
    const kept = this.state.drafts[trapId];
    return kept?.on === on ? asOfferedNow(kept.draft) : null;
  }

  /** Null forgets it. */
  async keepDraft(trapId: string, on: IsoDay, draft: UnsavedCheck | null): Promise<void> {
    const { [trapId]: _, ...others } = this.state.drafts;
    if (draft === null && !(trapId in this.state.drafts)) return;
    const drafts = draft ? { ...others, [trapId]: { on, draft } } : others;
    this.tell({ drafts });
    await (await this.keptDatabase).set('drafts', { person: this.person, byTrap: drafts });
  }

  /**
   * Keeps what a draft says on disk, then resolves, with how to take all of it back. Nothing is kept when it rejects.
   * @param on the day of the visit
   * @param correcting the check that the draft replaces
   */
  async save(
    draft: UnsavedCheck,
    { trap, stop, on }: { readonly trap: RoundTrap; readonly stop: RoundStop; readonly on: IsoDay },
    correcting: Written<'checks'> | null,
  ): Promise<() => Promise<void>> {
    const { round, written } = this.state;
    if (!this.outbox) throw new Error('nothing is kept on this phone yet');
    const { trapId } = trap;
    const checkedOn = correcting?.last.checkedOn ?? on;
    const visit = correcting?.last.visit ?? visitNumber(trap, checkedOn, written);
    const photo = draft.photo instanceof Blob ? await this.outbox.putPhoto(draft.photo) : draft.photo;
    const lures = ofKind(written, 'lures').filter(({ key }) => key === `${trapId}|${checkedOn}`);
    const wanted: WantedRecord[] = [
      { kind: 'checks', value: checkFrom(draft, { trapId, checkedOn, visit }, photo, correcting?.last ?? null) },
    ];
    if (draft.lureChanged) {
      const lure = lures[0]?.last;
      wanted.push({ kind: 'lures', value: { ...lure, trapId, placedOn: checkedOn, lifeDays: draft.lureLifeDays } });
    }
    for (const { fieldId } of stop.fields) {
      const stage = draft.stages[fieldId];
      if (stage) wanted.push({ kind: 'stages', value: { fieldId, observedOn: checkedOn, stage } });
    }
    // Somebody stands before the trap now: that it was passed by no longer holds.
    const skip = round && ofRound(round, written, 'skips').get(trapId);
    const takeBack = await this.say(wanted, [...(correcting ? [correcting, ...lures] : []), ...(skip ? [skip] : [])]);
    await this.keepDraft(trapId, on, null);
    return async () => {
      await takeBack();
      await this.keepDraft(trapId, on, draft);
    };
  }

  /**
   * Keeps records on disk and has them sent; gives how to take back all of it.
   * @param before records that `wanted` is said in place of
   */
  async say(wanted: readonly WantedRecord[], before: readonly Written[] = []): Promise<() => Promise<void>> {
    const was = this.state.written;
    const plan = revisionsFor(wanted, before, was, Date.now());
    await this.carryOut(plan);
    return () => this.carryOut(revisionsBack(plan, was, this.state.written, Date.now()));
  }

  /** Says a record that a wrong clock wrote of the day on which it really was. */
  async redate(written: Written, day: IsoDay): Promise<void> {
    await this.say([onDay(written, day)], [written]);
  }

  private async carryOut({ revisions, replaces }: PlannedRevisions): Promise<void> {
    await this.outbox!.put(...revisions);
    for (const refused of replaces) await this.outbox!.discard(refused);
    await this.readOutbox();
  }

  /** Keeps a sample under way on disk, in place of what was kept of it. */
  async keepWalk(walk: Walk): Promise<void> {
    await this.keepWalks([...this.state.walks.filter((each) => each.id !== walk.id), walk]);
    void navigator.storage?.persist?.();
  }

  /** Shown at once, so that the next tap counts on this one; resolves when it is on disk. */
  changeWalk(id: string, change: (walk: Walk) => Walk): Promise<void> {
    return this.keepWalks(this.state.walks.map((each) => (each.id === id ? change(each) : each)));
  }

  async dropWalk(id: string): Promise<void> {
    await this.keepWalks(this.state.walks.filter((each) => each.id !== id));
  }

  /** Keeps what was seen as records, then lets the walk go; gives how to take both back. */
  async saveWalk(walk: Walk, wanted: readonly WantedRecord[]): Promise<() => Promise<void>> {
    const takeBack = await this.say(wanted);
    await this.dropWalk(walk.id);
    return async () => {
      await takeBack();
      await this.keepWalk(walk);
    };
  }

  private async keepWalks(walks: readonly Walk[]): Promise<void> {
    this.tell({ walks });
    await (await this.keptDatabase).set('walks', walks);
  }

  photo = (name: string): Promise<Blob | null> => this.outbox?.photo(name) ?? Promise.resolve(null);
  send = (): void => void this.outbox?.sync();
  retry = (revisionId: string): Promise<void> => this.outbox!.retry(revisionId);

  async discard(written: Written): Promise<void> {
    for (const { state, revision } of written.entries) if (state === 'refused') await this.outbox!.discard(revision.revisionId);
  }

  /** Opens what belongs to a person; another's view and round are put out of sight, and their outbox stays theirs. */
  private async openFor(person: string): Promise<void> {
    if (this.outbox && person === this.person) return;
    const database = await this.keptDatabase;
    this.outbox?.close();
    this.person = person;
    this.outbox = await openOutbox({ person });
    this.outbox.subscribe(() => void this.readOutbox());
    await database.set('person', person);
    const own = <T extends { readonly person: string }>(fact: T | undefined): T | null => (fact?.person === person ? fact : null);
    const [view, round, scouting, walks, drafts, clock, role] = await Promise.all([
      database.get('view'),
      database.get('round'),
      database.get('scouting'),
      database.get('walks'),
      database.get('drafts'),
      database.get('clock'),
      database.get('role'),
    ]);
    this.tell({
      kept: own(view),
      round: own(round),
      scouting: own(scouting),
      walks: (walks ?? []).filter((walk) => own(walk)),
      drafts: own(drafts)?.byTrap ?? {},
      clock: clock ?? null,
      role: role ?? null,
    });
    await this.readOutbox();
  }

  private async keepRound(round: Round | null): Promise<void> {
    await (await this.keptDatabase).set('round', round ? { ...round, person: this.person } : undefined);
    this.tell({ round });
  }

  private async readOutbox(): Promise<void> {
    const outbox = this.outbox!;
    const entries = await outbox.all();
    if (outbox === this.outbox) this.tell({ entries, written: writtenRecords(entries), status: outbox.status() });
  }

  private tell(news: Partial<DeviceState>): void {
    this.state = { ...this.state, ...news };
    for (const listener of this.listeners) listener();
  }
}

/** The view on a day, with what was written here before a place in the outbox and the server had not yet counted. */
export function viewOn(kept: KeptView, on: IsoDay, entries: readonly OutboxEntry[], uptoPlace = Infinity): RoundView {
  const unknownThere = entries.filter(
    ({ place, state, answeredMs }) =>
      place <= uptoPlace && state !== 'refused' && (state === 'pending' || (answeredMs ?? 0) > kept.fetchedMs),
  );
  return roundLater(kept.view, on, standing(writtenRecords(unknownThere)));
}
