/**
 * The log's file: the log and its photos in one. Text -> JSON -> migrate -> schema -> faults -> each plan through the
 * door of plan files, and back. Whatever comes in, a log or refusals come out; nothing is thrown.
 */
import * as v from 'valibot';
import { entry } from '../plan/fault-words';
import { type FileKind, heldPlan, isOfKind, readKind } from '../plan/file-kinds';
import * as form from '../plan/plan';
import type { Refusal } from '../plan/plan';
import { type FileForm, schemaFaults, shown } from '../plan/schema-faults';
import { base64Of, bytesOfBase64 } from './base64';
import { logFaults } from './log-faults';
import { EVENT_KINDS, type Log, LogSchema, PlannedSchema, SAW, SideBySideSchema, type Trial } from './trial';

export interface Photo {
  /** Of the media type: 'image/jpeg'. */
  readonly type: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** By the id that a reading names. */
export type PhotosById = ReadonlyMap<string, Photo>;

export interface OpenedLog {
  readonly log: Log;
  readonly photos: PhotosById;
  /** Photos that could not be read: they do not cost the log. */
  readonly leftOut: readonly Refusal[];
}

/** Browsers keep no text of more than about 530 million letters. */
export const MOST_LETTERS = 500_000_000;
const LOG: FileKind = { word: 'log', sign: 'seambenchLog', mostLetters: MOST_LETTERS };

const PhotoSchema = v.strictObject({
  type: v.picklist(['image/jpeg', 'image/png', 'image/webp']),
  base64: v.string(),
});

/** The text of the log, with its photos where they are given: a line for each variety, trial, event and photo. */
export function logFileText(log: Log, photos: PhotosById = new Map()): string {
  const lines = [...photos].map(([id, photo]) => photoLine(id, photo));
  return `${logHead(log)}${lines.length === 0 ? '' : `,\n${PHOTOS_LINE}\n${lines.join(',\n')}\n  }`}\n}\n`;
}

/** All of the file but for photos and its last bracket. */
export function logHead({ seambenchLog, name, note, varieties, trials, events }: Log): string {
  const parts = [
    `"seambenchLog": ${seambenchLog}`,
    `"name": ${JSON.stringify(name)}`,
    ...(note === undefined ? [] : [`"note": ${JSON.stringify(note)}`]),
    `"varieties": ${block(varieties)}`,
    `"trials": ${block(trials)}`,
    `"events": ${block(events)}`,
  ];
  return `{\n  ${parts.join(',\n  ')}`;
}

/** The line after which each line is a photo. */
export const PHOTOS_LINE = '  "photos": {';

export function photoLine(id: string, { type, bytes }: Photo): string {
  return `    ${JSON.stringify(id)}: ${JSON.stringify({ type, base64: base64Of(bytes) })}`;
}

function block(things: readonly unknown[]): string {
  if (things.length === 0) return '[]';
  return `[\n    ${things.map((thing) => JSON.stringify(thing)).join(',\n    ')}\n  ]`;
}

export type Opened = OpenedLog | { readonly refusals: readonly Refusal[] };

/** Whether an opened file says of itself that it is a log. */
export function isLogText(text: string): boolean {
  return isOfKind(text, LOG);
}

export function openLogFile(text: string): Opened {
  const read = readKind(text, LOG);
  if ('refusals' in read) return read;
  const { photos: written = {}, ...rest } = Object(read.value) as Readonly<Record<string, unknown>>;
  const log = checked(rest);
  return 'refusals' in log ? log : { ...log, ...photosIn(written) };
}

function checked(value: unknown): { readonly log: Log } | { readonly refusals: readonly Refusal[] } {
  const parsed = v.safeParse(LogSchema, value);
  if (!parsed.success) {
    return {
      refusals: schemaFaults(value, parsed.issues, LOG_FORM).map((refusal) => ofLog(value, refusal)),
    };
  }
  const refusals = logFaults(parsed.output);
  const trials = parsed.output.trials.map((trial, index): Trial => {
    if (!('plan' in trial.layout)) return trial;
    const where = `trials[${index}] (${trial.id}).layout.plan`;
    const held = heldPlan(trial.layout.plan, where, `the plan of tile ${trial.tag}`);
    if ('plan' in held) return { ...trial, layout: { ...trial.layout, plan: held.plan } };
    refusals.push(...held.refusals);
    return trial;
  });
  return refusals.length > 0 ? { refusals } : { log: { ...parsed.output, trials } };
}

export function photosIn(written: unknown): Omit<OpenedLog, 'log'> {
  const photos = new Map<string, Photo>();
  const leftOut: Refusal[] = [];
  const isList = typeof written === 'object' && written !== null && !Array.isArray(written);
  if (!isList) leftOut.push(lostPhoto('photos', shown(written), 'The photos'));
  for (const [id, photo] of isList ? Object.entries(written) : []) {
    const parsed = v.safeParse(PhotoSchema, photo);
    const bytes = parsed.success && v.is(form.id, id) ? bytesOfBase64(parsed.output.base64) : null;
    if (parsed.success && bytes) photos.set(id, { type: parsed.output.type, bytes });
    else leftOut.push(lostPhoto(`photos.${id}`, 'no picture', `The photo ${id}`));
  }
  return { photos, leftOut };
}

export function lostPhoto(where: string, found: string, subject: string): Refusal {
  const allowed = '{ "type": "image/jpeg", "base64": "…" }';
  return { where, found, allowed, cure: `${subject} in the file cannot be read: choose another copy of it` };
}

/** What may stand at a place that the schema only names. */
const LOG_FORM: FileForm = {
  formMeant: (input) =>
    entry(input, 'plan') === undefined && entry(input, 'seed') === undefined
      ? SideBySideSchema
      : PlannedSchema,
  wanted: {
    name: 'words',
    varieties: 'a list of varieties',
    trials: 'a list of trials',
    events: 'a list of events',
    id: 'a name of its own, such as "t1"',
    group: 'words, which may be empty',
    tag: 'what stands on the tile',
    setOn: 'a date such as "2026-03-31"',
    on: 'a date such as "2026-03-31"',
    layout: '{} for pieces side by side, or a plan with its seed',
    plan: 'a plan',
    seed: 'the seed of the plan',
    tank: 'words, which may be empty',
    readings: 'a list of readings',
    seen: 'a list of what was seen of pairs',
    measured: 'a list of what was measured of varieties',
    a: 'the id of a variety',
    b: 'the id of a variety',
    variety: 'the id of a variety',
    saw: SAW.map((word) => `"${word}"`).join(', '),
    kind: EVENT_KINDS.map((word) => `"${word}"`).join(', '),
    tags: 'a list of tags',
  },
};

/** Of the file's places, what the page calls them. */
const PLACES: readonly (readonly [RegExp, string])[] = [
  [/\.readings\[(\d+)\](?: \([^)]*\))?/u, ', reading '],
  [/\.seen\[(\d+)\](?: \([^)]*\))?/u, ', pair '],
  [/\.measured\[(\d+)\](?: \([^)]*\))?/u, ', size '],
  [/^varieties\[(\d+)\](?: \([^)]*\))?/u, 'variety '],
  [/^events\[(\d+)\](?: \([^)]*\))?/u, 'event '],
  [/\.outline\[(\d+)\]/u, ', corner '],
];

/** Values whose names in the file are no words. */
const NAMES: Readonly<Record<string, string>> = {
  seambenchLog: 'the version',
  setOn: 'the day it was set',
  on: 'the day',
  saw: 'what was seen',
  over: 'the one above',
  ridgeMm: 'the ridge height',
  radiusMm: 'the radius',
  areaMm2: 'the area',
  pieceMm: 'the size of the pieces',
  gapMm: 'the gap',
};

/** The sentence for the page: 'In the log, tile A-14, reading 2: the day is "x"; it must be a date such as …'. */
function ofLog(root: unknown, refusal: Refusal): Refusal {
  const where = refusal.where === 'the plan' ? 'the log' : refusal.where;
  const [trial = '', index = ''] = /^trials\[(\d+)\](?: \([^)]*\))?/u.exec(where) ?? [];
  const tag = entry(entry(entry(root, 'trials'), Number(index)), 'tag');
  const named = typeof tag === 'string' && tag !== '' ? `tile ${tag}` : `trial ${Number(index) + 1}`;
  const [place, ...names] = PLACES.reduce(
    (words, [form, name]) => words.replace(form, (_, at: string) => `${name}${Number(at) + 1}`),
    where.slice(trial.length),
  ).split('.');
  const thing = trial === '' ? place : named + place;
  const last = names.at(-1) ?? thing;
  const holder = names.length === 0 ? 'In the log' : `In the log, ${thing}`;
  const { found, allowed } = refusal;
  if (allowed === 'nothing here')
    return { ...refusal, cure: `${holder}: “${last}” means nothing here: take it out` };
  const is = found === 'nothing' ? 'is missing' : `is ${found}`;
  return { ...refusal, where, cure: `${holder}: ${NAMES[last] ?? last} ${is}; it must be ${allowed}` };
}
