import { PASSWORD_MIN_LENGTH } from '@duskwatch/core';
import { PasswordEntry, TextEntry } from '../shared/entry/entries.tsx';
import { type Faults, nameTrouble, passwordTrouble } from '../shared/faults.ts';
import { peopleWords } from '../text/people.ts';

export interface Introduced {
  readonly name: string;
  readonly password: string;
}

/** What is wrong with how somebody introduces themselves. `program`: its name, which is no password. */
export const introductionFaults = ({ name, password }: Introduced, program: string): Faults => ({
  name: nameTrouble(name),
  password: passwordTrouble(password, [program, name]),
});

/** A name and a password that a newcomer chooses; a name that is known is shown as it is. */
export function IntroductionEntries(props: {
  readonly value: Introduced;
  readonly change: (value: Introduced) => void;
  readonly faults: Faults;
  readonly nameKnown?: boolean;
}) {
  const w = peopleWords.entry;
  const { value, change, faults } = props;
  return (
    <>
      {props.nameKnown ? (
        // Tells a password manager whose password this is.
        <input type="text" autoComplete="username" value={value.name} readOnly hidden />
      ) : (
        <TextEntry
          label={w.name}
          hint={w.nameHint}
          value={value.name}
          change={(name) => change({ ...value, name })}
          fault={faults.name ?? null}
          autoComplete="username"
        />
      )}
      <PasswordEntry
        label={w.newPassword}
        hint={w.passwordHint(PASSWORD_MIN_LENGTH)}
        value={value.password}
        change={(password) => change({ ...value, password })}
        fault={faults.password ?? null}
        autoComplete="new-password"
      />
    </>
  );
}
