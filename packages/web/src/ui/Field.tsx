import { type ReactNode, useId } from 'react';

/** What ties a box to its label, its hint and its faults. */
export interface BoxProps {
  readonly id: string;
  readonly 'aria-describedby': string | undefined;
  readonly 'aria-invalid': true | undefined;
}

/** One question of a form: its label, the box to answer in, what to know, and what is wrong with what is in it. */
export function Field(props: {
  label: ReactNode;
  hint?: string | undefined;
  faults?: readonly ReactNode[];
  /** Several boxes under one heading. */
  group?: boolean;
  className?: string;
  /** By which a form finds it. */
  name?: string;
  children: (box: BoxProps) => ReactNode;
}) {
  const { label, hint, faults = [], group, className, name, children } = props;
  const id = useId();
  const described = [...(hint ? [`${id}-hint`] : []), ...(faults.length > 0 ? [`${id}-faults`] : [])].join(' ') || undefined;
  const classes = ['field', className, faults.length > 0 && 'faulty'].filter(Boolean).join(' ');
  const rest = (
    <>
      {children({ id, 'aria-describedby': described, 'aria-invalid': faults.length > 0 || undefined })}
      {hint && (
        <p className="hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {faults.length > 0 && (
        <ul className="faults" id={`${id}-faults`}>
          {faults.map((fault, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: faults carry no state and two may be alike
            <li key={index}>{fault}</li>
          ))}
        </ul>
      )}
    </>
  );
  return group ? (
    <fieldset className={classes} data-name={name} aria-describedby={described}>
      <legend>{label}</legend>
      {rest}
    </fieldset>
  ) : (
    <div className={classes} data-name={name}>
      <label htmlFor={id}>{label}</label>
      {rest}
    </div>
  );
}

/** One of a few, all in sight. `unseen`: what they are is plain to see, and only read out. */
export function RadioField<T extends string>(props: {
  label: string;
  unseen?: boolean;
  options: readonly (readonly [value: T, label: ReactNode, lang?: string])[];
  value: T;
  choose: (value: T) => void;
  className?: string;
  /** What the chosen one asks for. */
  children?: ReactNode;
}) {
  const { label, unseen, options, value, choose, className, children } = props;
  const name = useId();
  return (
    <fieldset className={className ? `choices ${className}` : 'choices'}>
      <legend className={unseen ? 'unseen' : undefined}>{label}</legend>
      {options.map(([each, text, lang]) => (
        <label key={each} lang={lang}>
          <input type="radio" name={name} checked={value === each} onChange={() => choose(each)} />
          {text}
        </label>
      ))}
      {children}
    </fieldset>
  );
}

export type Choice = readonly [value: string, label: string];

/** One of many, in the small of a page's tools. */
export function SelectField(props: {
  label: string;
  value: string;
  choices: readonly Choice[];
  /** What it says when nothing is chosen, where that is a choice. */
  all?: string;
  disabled?: boolean;
  choose: (value: string) => void;
}) {
  const { label, value, choices, all, disabled, choose } = props;
  return (
    <Field label={label} className="small">
      {(box) => (
        <select {...box} value={value} disabled={disabled} onChange={(event) => choose(event.currentTarget.value)}>
          {all && <option value="">{all}</option>}
          {choices.map(([each, name]) => (
            <option key={each} value={each}>
              {name}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}
