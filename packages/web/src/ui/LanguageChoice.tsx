import { LANGUAGES, type Language } from '@duskwatch/core';
import { chooseLanguage, language } from '../text/language.ts';
import { peopleWords } from '../text/people.ts';

/** Each in its own words, for whoever reads only one of them. */
const NAMES: Readonly<Record<Language, string>> = { en: 'English', es: 'Español' };

export function LanguageChoice({ choose = chooseLanguage }: { choose?: (next: Language) => void }) {
  return (
    <fieldset className="choices">
      <legend className="unseen">{peopleWords.entry.language}</legend>
      {LANGUAGES.map((each) => (
        <label key={each} lang={each}>
          <input type="radio" name="language" checked={each === language} onChange={() => choose(each)} />
          {NAMES[each]}
        </label>
      ))}
    </fieldset>
  );
}
