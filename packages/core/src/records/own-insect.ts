/**
 * Insects that the catalogue does not hold: a program counts, maps and reports them under their scientific names, and
 * nothing is claimed of them. Its own rules may speak of them.
 */
import { editDistance } from './nearest.ts';

/** Genus and species, perhaps a subspecies, in lower case with hyphens between. */
const SLUG = /^[a-z]{2,}(-[a-z]{2,}){1,2}$/;
/** So few letters apart, one name is taken for a slip of the other. */
const SLIP = 2;

/** Whether a slug names an insect beside those that are known, and is not one of them with a slip in it. */
export const isOwnInsect = (slug: string, known: readonly string[]): boolean =>
  SLUG.test(slug) && known.every((each) => editDistance(slug, each) > SLIP);

/** Second words that no species has and many headings do. */
const NO_SPECIES =
  /^\S+ (moths?|insects?|males?|females?|traps?|counts?|catch(es)?|totals?|polillas?|palomillas?|insectos?|machos?|hembras?|trampas?|conteos?|capturas?)\b/i;

/** The slug of a text that is one, or that is written as scientific names are: `Acleris minuta`. Null for anything else. */
export function ownInsectIn(text: string, known: readonly string[]): string | null {
  const written = text.trim();
  if (NO_SPECIES.test(written)) return null;
  const slug = SLUG.test(written) ? written : /^\p{Lu}\p{Ll}+ \p{Ll}{2,}/u.test(written) ? slugOfName(written) : null;
  return slug !== null && isOwnInsect(slug, known) ? slug : null;
}

/** `Acleris minuta` of `acleris-minuta`. */
export const scientificNameOf = (slug: string): string => {
  const name = slug.replaceAll('-', ' ');
  return name.charAt(0).toUpperCase() + name.slice(1);
};

/** `acleris-minuta` of `Acleris minuta`, with what follows the species cut off at an author or a year. */
export const slugOfName = (name: string): string =>
  name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .trim()
    .split(/[\s_-]+/)
    .filter((word, index) => index < 2 || /^[a-z]+$/.test(word))
    .slice(0, 3)
    .join('-')
    .toLowerCase();
