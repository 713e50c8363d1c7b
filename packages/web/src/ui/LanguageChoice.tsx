import { LANGUAGES, type Language } from '@duskwatch/core';
import { chooseLanguage, language } from '../text/language.ts';
import { peopleWords } from '../text/people.ts';
import { RadioField } from './Field.tsx';

/** Each in its own words, for whoever reads only one of them. */
export const LANGUAGE_NAMES: Readonly<Record<Language, string>> = { en: 'English', es: 'Español' };

export function LanguageChoice({ choose = chooseLanguage }: { choose?: (next: Language) => void }) {
  return (
    <RadioField<Language>
      label={peopleWords.entry.language}
      unseen
      options={LANGUAGES.map((each) => [each, LANGUAGE_NAMES[each], each])}
      value={language}
      choose={choose}
    />
  );
}
