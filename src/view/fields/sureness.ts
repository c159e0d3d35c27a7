/** The three marks that say how sure a statement is: the same words everywhere on the page. */
import type { Sureness } from '../../model/defaults';

export const SURE: Readonly<Record<Sureness, { readonly label: string; readonly words: string }>> = {
  published: { label: 'published', words: 'A printed study stands behind it.' },
  practice: { label: 'common practice', words: 'Growers commonly report it; no study was found.' },
  guess: {
    label: 'a guess',
    words: 'Nobody has measured it: it was chosen so that the picture is plausible.',
  },
};
