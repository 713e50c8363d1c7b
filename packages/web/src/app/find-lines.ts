/** What the search lists: pages by the words on this device, all else as the server found it. */
import { foldText, matchOf, type Role, type SearchHit, typedWords } from '@duskwatch/core';
import type { NavigateOptions } from '@tanstack/react-router';
import { dayText } from '../format/day.ts';
import { findWords as w } from '../text/find.ts';
import { cropName, insectName, localName } from '../text/names.ts';
import { pagesWords } from '../text/pages.ts';
import { peopleWords } from '../text/people.ts';
import { placesFor, programPagesFor } from './places.ts';

export interface Line {
  readonly kind: SearchHit['kind'] | 'page';
  readonly key: string;
  readonly name: string;
  readonly about: string;
  /** Where it leads. */
  readonly link: NavigateOptions;
}

export function pageLines(role: Role, typed: string): Line[] {
  const pages = [
    ...placesFor(role).flatMap((place) =>
      place.pages.map(({ id, to }) => ({ to, name: pagesWords.pages[id], about: pagesWords.places[place.id] })),
    ),
    ...programPagesFor(role).map(({ id, to }) => ({ to, name: pagesWords.programPages[id], about: pagesWords.program })),
  ];
  const words = typedWords(typed);
  return pages
    .filter(({ name, about }) => words.length === 0 || matchOf(words, [foldText(name), foldText(about)]) !== null)
    .map(({ to, name, about }) => ({ kind: 'page', key: to, name, about: about === name ? '' : about, link: { to } }));
}

export function lineOf(hit: SearchHit): Line {
  switch (hit.kind) {
    case 'field':
      return {
        kind: 'field',
        key: `field ${hit.fieldId}`,
        name: hit.name,
        about: `${hit.farm} · ${cropName(hit.crop)}`,
        link: { to: '/fields/$fieldId', params: { fieldId: hit.fieldId } },
      };
    case 'farm':
      return {
        kind: 'farm',
        key: `farm ${hit.farm}`,
        name: hit.farm,
        about: w.fields(hit.fields),
        link: { to: '/', search: { farm: hit.farm } },
      };
    case 'trap':
      return {
        kind: 'trap',
        key: `trap ${hit.trapId}`,
        name: hit.trapId,
        about: [hit.station, insectName(hit.insect), hit.takenDownOn && w.takenDown(dayText(hit.takenDownOn))]
          .filter(Boolean)
          .join(' · '),
        link: { to: '/traps/$trapId', params: { trapId: hit.trapId } },
      };
    case 'insect':
      return {
        kind: 'insect',
        key: `insect ${hit.insect}`,
        name: localName(hit.commonName),
        about: hit.scientificName,
        link: { to: '/flights', search: { insect: hit.insect } },
      };
    case 'person':
      return {
        kind: 'person',
        key: `person ${hit.name}`,
        name: hit.name,
        about: peopleWords.roles[hit.role].name,
        link: { to: '/program/people' },
      };
    case 'record': {
      const where = hit.trapId ?? hit.fieldId ?? '';
      return {
        kind: 'record',
        key: `${hit.of} ${hit.on} ${where} ${hit.text}`,
        name: hit.text,
        about: `${w.records[hit.of]}, ${where}, ${dayText(hit.on)}`,
        link: hit.trapId
          ? { to: '/traps/$trapId', params: { trapId: where } }
          : { to: '/fields/$fieldId', params: { fieldId: where } },
      };
    }
  }
}
