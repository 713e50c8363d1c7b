import type { Verb, WeekView } from '@duskwatch/core';
import { VerbMark } from '../../shared/advice/VerbMark.tsx';
import { VERBS } from '../../shared/advice/verbs.ts';
import { words } from '../../text/index.ts';
import { language } from '../../text/language.ts';
import { cropName, localName } from '../../text/names.ts';
import { useWording } from '../../text/wording.ts';
import { type Choice, SelectField } from '../../ui/Field.tsx';
import { SORTS, type WeekSearch } from './search.ts';
import { countVerbs } from './select.ts';

type Change = (change: Partial<WeekSearch>) => void;

const distinct = (values: readonly string[]) => [...new Set(values)].sort((a, b) => a.localeCompare(b, language));

/** One verb at a time, with how often it is said: the shortest answer to where one must act. */
export function VerbFilter({ view, search, change }: { view: WeekView; search: WeekSearch; change: Change }) {
  const wording = useWording();
  const counts = countVerbs(view, search);
  const shown = VERBS.filter((verb): verb is Exclude<Verb, 'none'> => verb !== 'none');
  return (
    <fieldset className="verb-filter">
      <legend className="unseen">{words.filter.verb}</legend>
      {shown.map((verb) => (
        <button
          key={verb}
          type="button"
          className={`verb-${verb}`}
          aria-pressed={search.verb === verb}
          onClick={() => change({ verb: search.verb === verb ? undefined : verb })}
        >
          <VerbMark verb={verb} /> <b className="verb-word">{wording.verb[verb]}</b> {counts.get(verb) ?? 0}
        </button>
      ))}
    </fieldset>
  );
}

export function Filters({ view, search, change }: { view: WeekView; search: WeekSearch; change: Change }) {
  const w = words.filter;
  const farms = distinct(view.fields.map((field) => field.farm)).map((farm): Choice => [farm, farm]);
  const crops = distinct(view.fields.map((field) => field.crop)).map((crop): Choice => [crop, cropName(crop)]);
  const insects = view.insects.map((insect): Choice => [insect.id, localName(insect.commonName)]);
  const sorts = SORTS.map((sort): Choice => [sort, w.sorts[sort]]);
  const choose = (key: 'farm' | 'crop' | 'insect' | 'sort') => (value: string) => change({ [key]: value || undefined });
  return (
    <>
      <SelectField label={w.farm} all={w.all.farm} value={search.farm ?? ''} choices={farms} choose={choose('farm')} />
      <SelectField label={w.crop} all={w.all.crop} value={search.crop ?? ''} choices={crops} choose={choose('crop')} />
      <SelectField label={w.insect} all={w.all.insect} value={search.insect ?? ''} choices={insects} choose={choose('insect')} />
      <SelectField label={w.sort} value={search.sort ?? 'farm'} choices={sorts} choose={choose('sort')} />
    </>
  );
}
