/** A lesson that is being written: what it begins as, and the changes that concern more than one part of it. */
import type { Plan } from '../plan/plan';
import { type Amount, type Claim, type Lesson, MOST_TITLE } from './lesson';

const ADDED = ' (my own)';

/** On a tile, with room for a first paragraph and a first question. Its name is made when it is kept. */
export function newDraft(plan: Plan, seed: string, month: number): Lesson {
  return {
    id: '',
    title: '',
    idea: '',
    plan,
    seed,
    month,
    watch: '',
    text: [{ sure: 'practice', words: '' }],
    questions: [{ words: '', answers: [newAnswer(), newAnswer()] }],
    tries: [],
    claims: [],
  };
}

export function newAnswer() {
  return { words: '', isRight: false, earns: '' };
}

export function titleOfCopy({ title }: Pick<Lesson, 'title'>): string {
  return title.endsWith(ADDED) ? title : `${title.slice(0, MOST_TITLE - ADDED.length)}${ADDED}`;
}

/** The old tile's cut lies nowhere on another. */
export function onTile({ cut: _cut, ...draft }: Lesson, plan: Plan, seed: string): Lesson {
  return { ...draft, plan, seed, month: Math.min(draft.month, plan.months) };
}

/** Claims name things to try by their place: they follow when places change. Places count from 0. */
export function claimsAfter(claims: readonly Claim[], moved: (place: number) => number): readonly Claim[] {
  const after = (amount: Amount): Amount =>
    amount.try === undefined ? amount : { ...amount, try: moved(amount.try - 1) + 1 };
  return claims.map((claim) => ({
    ...claim,
    amount: after(claim.amount),
    ...(claim.less && { less: after(claim.less) }),
    ...(claim.by && { by: after(claim.by) }),
  }));
}

/** Numbers from 1 of the claims that speak of the thing to try at a place from 0. */
export function claimsOn(claims: readonly Claim[], place: number): number[] {
  return claims.flatMap(({ amount, less, by }, at) =>
    [amount, less, by].some((one) => one?.try === place + 1) ? [at + 1] : [],
  );
}
