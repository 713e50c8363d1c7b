/** One box of a form: its label, what to know, and what is wrong with what is in it. */
import { type Problem, parseDay, slugOfName } from '@duskwatch/core';
import { useState } from 'react';
import { shortDay } from '../../format/day.ts';
import { recordWords } from '../../text/record.ts';
import { type BoxProps, Field } from '../../ui/Field.tsx';
import { PhotoBox } from './PhotoBox.tsx';
import { ProblemText } from './ProblemText.tsx';

export interface Option {
  readonly value: string;
  readonly label: string;
  /** Options under one heading. */
  readonly group?: string;
}

export type ControlKind =
  | { readonly as: 'text' | 'long' | 'date' | 'time' | 'figure' }
  /** From the camera or a file; the text is its name. */
  | { readonly as: 'photo' }
  /** A yes to be ticked; unticked says nothing. */
  | { readonly as: 'tick' }
  /** Free text with words to choose from. */
  | { readonly as: 'suggest'; readonly options: readonly Option[] }
  /** One of many. */
  | { readonly as: 'select'; readonly options: readonly Option[] }
  /** One of many, or another by its scientific name. */
  | { readonly as: 'insect'; readonly options: readonly Option[] }
  /** One of few, all in sight. */
  | { readonly as: 'chips'; readonly options: readonly Option[] }
  /** Any of some; the text is a list with `;` between. */
  | { readonly as: 'several'; readonly options: readonly Option[] };

export interface ControlProps {
  readonly name: string;
  readonly control: ControlKind;
  readonly text: string;
  readonly write: (text: string) => void;
  readonly label: string;
  readonly hint?: string | undefined;
  readonly needed: boolean;
  readonly problems: readonly Problem[];
}

export function Control(props: ControlProps) {
  const { control, label, hint, needed, problems, name } = props;
  return (
    <Field
      label={
        <>
          {label}
          {needed && <span className="needed"> ({recordWords.required})</span>}
        </>
      }
      hint={hint}
      faults={problems.map((problem) => <ProblemText key={`${problem.got}|${problem.expected}`} problem={problem} />)}
      group={control.as === 'chips' || control.as === 'several' || control.as === 'photo'}
      className={`field-${control.as}`}
      name={name}
    >
      {(box) => <Box {...props} shared={box} />}
    </Field>
  );
}

function Box({ control, text, write, shared, name }: ControlProps & { shared: BoxProps }) {
  const change = (event: { readonly currentTarget: { readonly value: string } }) => write(event.currentTarget.value);
  switch (control.as) {
    case 'text':
      return <input {...shared} type="text" value={text} onChange={change} autoComplete="off" />;
    case 'figure':
      return <input {...shared} type="text" inputMode="decimal" value={text} onChange={change} autoComplete="off" />;
    case 'date':
      return (
        <>
          <input {...shared} type="date" value={text} onChange={change} />
          {/* The browser writes dates in its own order, whatever order was chosen here. */}
          <span className="day-said">{parseDay(text) === null ? '' : `${shortDay(text)} ${text.slice(0, 4)}`}</span>
        </>
      );
    case 'time':
      return <input {...shared} type="time" value={text} onChange={change} />;
    case 'photo':
      return <PhotoBox shared={shared} name={text} write={write} />;
    case 'tick':
      return <input {...shared} type="checkbox" checked={text === 'yes'} onChange={() => write(text === 'yes' ? '' : 'yes')} />;
    case 'long':
      return <textarea {...shared} rows={3} value={text} onChange={change} />;
    case 'suggest':
      return (
        <>
          <input {...shared} type="text" value={text} onChange={change} list={`${shared.id}-list`} autoComplete="off" />
          <datalist id={`${shared.id}-list`}>
            {control.options.map(({ value, label }) => (
              <option key={value} value={value}>
                {label}
              </option>
            ))}
          </datalist>
        </>
      );
    case 'select':
      return (
        <select {...shared} value={text} onChange={change}>
          <option value="">{recordWords.choose}</option>
          {control.options.map(({ value, label }) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </select>
      );
    case 'insect':
      return <InsectBox options={control.options} text={text} write={write} shared={shared} />;
    case 'chips':
      return (
        <div className="chips">
          {control.options.map(({ value, label }) => (
            <label key={value} className="chip">
              <input type="radio" name={`${shared.id}-${name}`} value={value} checked={text === value} onChange={change} />
              <span>{label}</span>
            </label>
          ))}
        </div>
      );
    case 'several':
      return <Several options={control.options} text={text} write={write} />;
  }
}

/** The last choice of the list turns it into a box for a name. */
const ANOTHER = '*';

function InsectBox(props: { options: readonly Option[]; text: string; write: (text: string) => void; shared: BoxProps }) {
  const { options, text, write, shared } = props;
  const [name, setName] = useState<string | null>(null);
  if (name === null)
    return (
      <select
        {...shared}
        value={text}
        onChange={({ currentTarget: { value } }) => {
          if (value !== ANOTHER) return write(value);
          setName('');
          write('');
        }}
      >
        <option value="">{recordWords.choose}</option>
        {options.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
        <option value={ANOTHER}>{recordWords.anotherInsect}</option>
      </select>
    );
  return (
    <>
      <input
        {...shared}
        type="text"
        value={name}
        placeholder={recordWords.scientificName}
        autoComplete="off"
        // biome-ignore lint/a11y/noAutofocus: it stands where the list was that was just left for it
        autoFocus
        onChange={({ currentTarget: { value } }) => {
          setName(value);
          write(slugOfName(value));
        }}
      />
      <button
        type="button"
        className="plain-button"
        onClick={() => {
          setName(null);
          write('');
        }}
      >
        {recordWords.fromTheList}
      </button>
    </>
  );
}

function Several({ options, text, write }: { options: readonly Option[]; text: string; write: (text: string) => void }) {
  const chosen = text.split(';').filter(Boolean);
  // What was chosen before stands on top, and stays where it is while boxes are ticked.
  const [first] = useState(() => new Set(options.filter(({ value }) => chosen.includes(value)).map(({ group }) => group ?? '')));
  const all = [...new Set(options.map(({ group }) => group ?? ''))];
  const groups = [...all.filter((group) => first.has(group)), ...all.filter((group) => !first.has(group))];
  const flip = (value: string) =>
    write((chosen.includes(value) ? chosen.filter((each) => each !== value) : [...chosen, value]).join(';'));
  return (
    <div className="several">
      {groups.map((group) => (
        <div key={group}>
          {group && <p className="several-group">{group}</p>}
          {options
            .filter((option) => (option.group ?? '') === group)
            .map(({ value, label }) => (
              <label key={value} className="tick">
                <input type="checkbox" checked={chosen.includes(value)} onChange={() => flip(value)} />
                <span>{label}</span>
              </label>
            ))}
        </div>
      ))}
    </div>
  );
}
