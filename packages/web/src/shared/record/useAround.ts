/** What forms and histories refer to: the program's fields and traps by name. */
import { useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import { useWording } from '../../text/wording.ts';
import type { Around } from './form-texts.ts';
import type { Names } from './naming.ts';
import { recordsQuery } from './queries.ts';

export function useAround(): { readonly around: Required<Pick<Around, 'fields' | 'traps'>>; readonly names: Names } {
  const wording = useWording();
  const { data: fields } = useQuery(recordsQuery('fields'));
  const { data: traps } = useQuery(recordsQuery('traps'));
  return useMemo(() => {
    const around = { fields: fields?.map((each) => each.value) ?? [], traps: traps?.map((each) => each.value) ?? [] };
    return { around, names: { wording, fields: new Map(around.fields.map((field) => [field.fieldId, field])) } };
  }, [fields, traps, wording]);
}
