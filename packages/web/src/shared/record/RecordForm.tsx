import { type Column, type RecordKind, type RecordOf, tables, type Wording } from '@duskwatch/core';
import { type ReactNode, useRef, useState } from 'react';
import { labelOf, recordWords } from '../../text/record.ts';
import { useWording } from '../../text/wording.ts';
import { Control, type ControlKind } from './Control.tsx';
import { FormFoot } from './FormFoot.tsx';
import { type Around, type FormTexts, readForm } from './form-texts.ts';
import { namesOfWords } from './listed-words.ts';
import { PlaceHere } from './PlaceHere.tsx';
import { ProblemText } from './ProblemText.tsx';

export interface RecordFormProps<K extends RecordKind> {
  readonly kind: K;
  readonly start: FormTexts;
  /** Properties that the form does not show, as they stay. */
  readonly kept?: Partial<RecordOf<K>>;
  readonly controls?: Readonly<Record<string, ControlKind>>;
  readonly around?: Around;
  /** True for a record that must not take the place of another. */
  readonly fresh?: boolean;
  /** Properties that must be filled in here, though the table lets them be empty. */
  readonly demanded?: (draft: FormTexts) => readonly (keyof RecordOf<K> & string)[];
  /** Order in which the boxes stand; the others follow as the table has them. */
  readonly order?: readonly string[];
  /** Texts that follow from the others until somebody writes in their boxes. */
  readonly derived?: (draft: FormTexts) => FormTexts;
  /** What the record is of, over the boxes: field, trap, day. */
  readonly of?: (draft: FormTexts) => string | null;
  readonly saveLabel?: string;
  /** What to know while writing, beside the boxes. */
  readonly aside?: (draft: FormTexts) => ReactNode;
  /** Further boxes under the record's own. */
  readonly more?: ReactNode;
  /** Resolves to false when it is to be tried again. */
  readonly save: (value: RecordOf<K>) => Promise<boolean>;
  readonly close: () => void;
}

const usual = (column: Column, kind: RecordKind, wording: Wording): ControlKind => {
  switch (column.type) {
    case 'day':
      return { as: 'date' };
    case 'whole':
    case 'number':
      return { as: 'figure' };
    case 'yes-no':
      return {
        as: 'chips',
        options: [
          { value: 'yes', label: recordWords.yes },
          { value: 'no', label: recordWords.no },
        ],
      };
    case 'word':
      return { as: 'chips', options: optionsOf(column, namesOfWords(kind, column.key, wording)) };
    default:
      return { as: 'text' };
  }
};

/** The words of a list; where none need be chosen, a choice can be taken back. */
const optionsOf = ({ words, needs }: Column, names: Readonly<Record<string, string>> | null) => [
  ...(words ?? []).map((word) => ({ value: word, label: names?.[word] ?? word })),
  ...(needs === 'cell' ? [] : [{ value: '', label: recordWords.nothing }]),
];

/** Any record, from the columns of its table; nothing is judged before it is first saved, and then at every key. */
export function RecordForm<K extends RecordKind>(props: RecordFormProps<K>) {
  const { kind, kept = {} as Partial<RecordOf<K>>, controls = {}, around = {}, order = [], aside, save, close } = props;
  const wording = useWording();
  const [typed, change] = useState(props.start);
  const [touched, touch] = useState<ReadonlySet<string>>(new Set());
  const follows = Object.entries(props.derived?.(typed) ?? {}).filter(([key]) => !touched.has(key));
  const draft: FormTexts = { ...typed, ...Object.fromEntries(follows) };
  const [tried, setTried] = useState(false);
  const [saving, setSaving] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  const demanded = props.demanded?.(draft) ?? [];
  const place = ({ key }: Column) => (order.includes(key) ? order.indexOf(key) : order.length);
  const columns = tables[kind].columns.filter((column) => !(column.key in kept)).sort((a, b) => place(a) - place(b));
  const of = props.of?.(draft);
  const read = readForm(kind, draft, { kept, around, demanded, fresh: props.fresh ?? false });
  const problems = tried ? read.problems : new Map<string, never>();

  const submit = async () => {
    setTried(true);
    if (read.value === null) {
      const first = columns.find((column) => read.problems.has(column.key));
      form.current?.querySelector<HTMLElement>(`[data-name="${first?.key}"] :is(input, select, textarea)`)?.focus();
      return;
    }
    setSaving(true);
    if (await save(read.value)) close();
    else setSaving(false);
  };

  return (
    <form
      ref={form}
      className="record-form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if (!saving) void submit();
      }}
    >
      {of && <p className="record-of">{of}</p>}
      <div className="record-boxes">
        {columns.map((column) => {
          const { label, hint } = labelOf(kind, column.key);
          return (
            <Control
              key={column.key}
              name={column.key}
              control={controls[column.key] ?? usual(column, kind, wording)}
              text={draft[column.key] ?? ''}
              write={(text) => {
                change((before) => ({ ...before, [column.key]: text }));
                touch((before) => new Set([...before, column.key]));
              }}
              label={label}
              hint={hint}
              needed={column.needs === 'cell' || demanded.some((key) => key === column.key)}
              problems={problems.get(column.key) ?? []}
            />
          );
        })}
        {columns.some((column) => column.key === 'longitude') && (
          <PlaceHere write={(latitude, longitude) => change((before) => ({ ...before, latitude, longitude }))} />
        )}
        {props.more}
        {[...problems].some(([key]) => !columns.some((column) => column.key === key)) && (
          <ul className="faults">
            {[...problems].flatMap(([key, said]) =>
              columns.some((column) => column.key === key)
                ? []
                : said.map((problem) => (
                    <li key={`${key}|${problem.expected}`}>
                      <ProblemText problem={problem} />
                    </li>
                  )),
            )}
          </ul>
        )}
      </div>
      {aside && <div className="record-aside">{aside(draft)}</div>}
      <FormFoot
        save={props.saveLabel ?? recordWords.save}
        close={close}
        status={problems.size > 0 && recordWords.faults(problems.size)}
        busy={saving}
      />
    </form>
  );
}
