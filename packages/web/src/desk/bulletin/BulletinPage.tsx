import {
  type Bulletin,
  type BulletinBlock,
  type BulletinInsect,
  type BulletinView,
  bulletinHtml,
  bulletinIn,
  bulletinText,
  type IsoDay,
  LANGUAGES,
  type Language,
  type WeekCatch,
} from '@duskwatch/core';
import { keepPreviousData, queryOptions, useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useMemo, useState } from 'react';
import { dated, getJson } from '../../api/client.ts';
import { copyText } from '../../browser/clipboard.ts';
import { saveFile } from '../../browser/save.ts';
import { dayText } from '../../format/day.ts';
import { countText, rateText } from '../../format/number.ts';
import { bulletinWords as w } from '../../text/bulletin.ts';
import { dayOrder, language as pageLanguage } from '../../text/language.ts';
import { insectName } from '../../text/names.ts';
import { Failure } from '../../ui/Failure.tsx';
import { RadioField } from '../../ui/Field.tsx';
import { Folded } from '../../ui/Folded.tsx';
import { LANGUAGE_NAMES } from '../../ui/LanguageChoice.tsx';
import { useTitle } from '../../ui/media.ts';
import { Table } from '../../ui/table/Table.tsx';
import { toast } from '../../ui/toast.ts';
import { draftOf, isStale, keepWords, keptWords, type OwnWords, sent, worded } from './own-words.ts';
import { SeasonPicture } from './SeasonPicture.tsx';

const route = getRouteApi('/bulletin');

const bulletinQuery = (on: IsoDay | undefined) =>
  queryOptions({
    queryKey: ['week', 'bulletin', on ?? null],
    queryFn: ({ signal }) => getJson<BulletinView>(dated('/api/bulletin', on), signal),
    placeholderData: keepPreviousData,
  });

/** The week for the growers, drafted from the evidence and put into a person's words. */
export function BulletinPage() {
  const { on } = route.useSearch();
  const { data: view, error, refetch, isPlaceholderData } = useQuery(bulletinQuery(on));
  useTitle(w.title);
  if (error && !view) return <Failure error={error} again={refetch} />;
  return (
    <main className="page bulletin-page" id="page" aria-busy={!view || isPlaceholderData}>
      {view ? <Composer key={view.on} view={view} /> : <h1>{w.title}</h1>}
      {!view && <div className="skeleton skeleton-field" aria-hidden="true" />}
    </main>
  );
}

function Composer({ view }: { view: BulletinView }) {
  const [language, speak] = useState<Language>(pageLanguage);
  const [own, setOwn] = useState(() => keptWords(view.on));
  const bulletin = useMemo(() => bulletinIn(language, view, dayOrder), [language, view]);
  const word = (block: BulletinBlock, text: string) => {
    const next = worded(own, language, block, text);
    keepWords(view.on, next);
    setOwn(next);
  };
  const words = sent(own[language], bulletin.blocks);
  return (
    <>
      <div className="page-head">
        <div>
          <h1>{w.title}</h1>
          <p className="sub">{w.sub(dayText(view.from), dayText(view.on))}</p>
        </div>
        <div className="actions">
          <button
            type="button"
            className="button"
            onClick={async () => toast((await copyText(bulletinText(bulletin, words))) ? w.copied : w.notCopied)}
          >
            {w.copy}
          </button>
          <button
            type="button"
            className="button"
            onClick={() =>
              saveFile(new Blob([bulletinHtml(bulletin, words)], { type: 'text/html' }), `bulletin-${view.on}-${language}.html`)
            }
          >
            {w.page}
          </button>
          <button type="button" className="button primary" onClick={() => print()}>
            {w.print}
          </button>
        </div>
      </div>
      <div className="bulletin-desk">
        <section className="bulletin-words no-print" aria-label={w.write}>
          <RadioField
            label={w.language}
            options={LANGUAGES.map((each) => [each, LANGUAGE_NAMES[each], each] as const)}
            value={language}
            choose={speak}
          />
          {view.insects.length === 0 && <p className="absent">{w.none}</p>}
          {bulletin.blocks.map((block) => (
            <Words
              key={`${language} ${block.id}`}
              block={block}
              own={own[language][block.id]}
              write={(text) => word(block, text)}
            >
              <Figures insect={view.insects.find(({ insect }) => block.id === `insect:${insect.id}`)} />
            </Words>
          ))}
          <p className="key">{w.kept}</p>
        </section>
        <Sheet bulletin={bulletin} words={words} view={view} />
      </div>
    </>
  );
}

function Words(props: {
  block: BulletinBlock;
  own: OwnWords | undefined;
  write: (text: string) => void;
  children: React.ReactNode;
}) {
  const { block, own, write, children } = props;
  const text = own?.text ?? draftOf(block);
  const label = block.fixed ? w.add(block.title) : block.title;
  return (
    <div className="bulletin-block">
      <h2>{block.title}</h2>
      {block.fixed && (
        <div className="bulletin-fixed">
          <p className="key">{w.always}</p>
          {block.lines.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </div>
      )}
      <textarea
        aria-label={label}
        placeholder={block.fixed ? label : undefined}
        rows={Math.max(block.fixed ? 1 : 2, text.split('\n').length + Math.floor(text.length / 90))}
        value={text}
        onChange={({ currentTarget }) => write(currentTarget.value)}
      />
      {own && !block.fixed && (
        <p className="bulletin-own">
          {w.yours}{' '}
          <button type="button" className="plain-button" onClick={() => write(draftOf(block))}>
            {w.asDrafted}
          </button>
        </p>
      )}
      {own && isStale(own, block) && (
        <div className="entries-fault" role="status">
          <b>{w.stale}</b>
          <p className="bulletin-draft">{draftOf(block)}</p>
          <p className="actions">
            <button type="button" className="button" onClick={() => write(draftOf(block))}>
              {w.take}
            </button>
            <button type="button" className="plain-button" onClick={() => write(own.text)}>
              {w.leave}
            </button>
          </p>
        </div>
      )}
      {children}
    </div>
  );
}

/** What each figure of an insect was summed of. */
function Figures({ insect }: { insect: BulletinInsect | undefined }) {
  if (!insect) return null;
  const weeks: readonly (readonly [string, WeekCatch | null])[] = [
    [w.thisWeek, insect.week],
    [w.weekBefore, insect.before],
    ...insect.earlier.map(({ year, week }) => [String(year), week] as const),
  ];
  const rows = weeks.flatMap(([when, week]) => (week ? [{ when, ...week }] : []));
  if (rows.length === 0) return null;
  return (
    <Folded title={w.figures}>
      <Table
        label={w.figures}
        fixed
        rows={rows}
        keyOf={({ when }) => when}
        columns={[
          { head: w.when, said: ({ when }) => when, names: true },
          { head: w.moths, figure: [({ moths }) => moths, countText], number: true },
          { head: w.nights, figure: [({ nights }) => nights, countText], number: true },
          { head: w.traps, figure: [({ traps }) => traps, countText], number: true },
          { head: w.farms, figure: [({ farms }) => farms, countText], number: true },
          { head: w.rate, figure: [({ perNight }) => perNight, rateText], number: true },
        ]}
      />
    </Folded>
  );
}

function Sheet({ bulletin, words, view }: { bulletin: Bulletin; words: Readonly<Record<string, string>>; view: BulletinView }) {
  return (
    <article className="bulletin-sheet" lang={bulletin.language} aria-label={w.preview}>
      {bulletin.invented && <p className="bulletin-invented">{bulletin.invented}</p>}
      <h2 className="bulletin-title">{bulletin.title}</h2>
      <p className="bulletin-week">{bulletin.week}</p>
      {bulletin.blocks.map(({ id, title, lines }) => {
        const insect = view.insects.find((each) => id === `insect:${each.insect.id}`);
        return (
          <section key={id} className={insect ? 'bulletin-insect' : undefined}>
            <h3>{title}</h3>
            {insect && <SeasonPicture insect={insect} label={w.season(insectName(insect.insect.id))} />}
            {(words[id]?.split('\n') ?? lines)
              .filter((line) => line.trim() !== '')
              .map((line, place) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: two lines may be alike, and none has a state
                <p key={place}>{line}</p>
              ))}
          </section>
        );
      })}
    </article>
  );
}
