import type { DayOrder, Language, LengthUnit, TemperatureUnit } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { send } from '../../api/client.ts';
import { sessionQuery } from '../../api/session.ts';
import { type Theme, useLengthUnit, useTemperatureUnit, useTheme } from '../../browser/preferences.ts';
import { longDay } from '../../format/day.ts';
import { chooseDayOrder, chooseLanguage, dayOrder, language } from '../../text/language.ts';
import { settingsWords as w } from '../../text/settings.ts';
import { RadioField } from '../../ui/Field.tsx';
import { LanguageChoice } from '../../ui/LanguageChoice.tsx';
import { Setting } from '../../ui/Setting.tsx';

/** A day whose number cannot be taken for a month's. */
const EXAMPLE = '2026-07-13';
/** Each as it is written, in any language. */
const ORDERS: Readonly<Record<DayOrder, string>> = { 'day-month': '13 July 2026', 'month-day': 'July 13, 2026' };

/** Language, units, dates and theme of this browser. */
export function Preferences() {
  const { data: session } = useQuery(sessionQuery);
  const [temperature, chooseTemperature] = useTemperatureUnit();
  const [length, chooseLength] = useLengthUnit();
  const [theme, chooseTheme] = useTheme();
  const choose = async (next: Language) => {
    // The account's language follows, so that it is the same on every device; without a server only this one changes.
    if (session?.mode === 'accounts') await send('PATCH', '/api/session', { language: next }).catch(() => null);
    chooseLanguage(next);
  };
  return (
    <>
      <Setting title={w.language.title} note={w.language.note}>
        <LanguageChoice choose={choose} />
      </Setting>
      <Setting title={w.units.title} note={w.units.note}>
        <RadioField<TemperatureUnit>
          label={w.units.temperature}
          options={entries({ F: w.units.F, C: w.units.C })}
          value={temperature}
          choose={chooseTemperature}
        />
        <RadioField<LengthUnit>
          label={w.units.length}
          options={entries({ ft: w.units.ft, m: w.units.m })}
          value={length}
          choose={chooseLength}
        />
      </Setting>
      {language === 'en' && (
        <Setting title={w.dates.title} note={w.dates.example(longDay(EXAMPLE))}>
          <RadioField<DayOrder> label={w.dates.order} options={entries(ORDERS)} value={dayOrder} choose={chooseDayOrder} />
        </Setting>
      )}
      <Setting title={w.theme.title}>
        <RadioField<Theme> label={w.theme.title} options={entries(w.theme.options)} value={theme} choose={chooseTheme} />
      </Setting>
    </>
  );
}

const entries = <T extends string>(names: Readonly<Record<T, string>>) => Object.entries(names) as [T, string][];
