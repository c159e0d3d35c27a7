/**
 * `npm run --silent validate`: grows every check, writes a report and says what falls short.
 * Exit 1 if a check falls short without a known reason, 2 for bad input.
 */
import { fork, type ChildProcess } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { tallyOf, type Report, type TopicReport } from '../checks/report';
import { TOPICS } from '../checks/topics';
import { MODEL_VERSION } from '../model/defaults';
import { markdownOf, plotFile } from './report-markdown';
import { svgOf } from './report-svg';
import { validateOptions, type ValidateOptions } from './validate-options';
import { Refused } from './words';

const PAGE_COPY = fileURLToPath(new URL('../view/knows/report.json', import.meta.url));

/** Processes and not threads: the loader of TypeScript does not reach into Node's threads. */
const WORKER = fileURLToPath(new URL('validate-worker.ts', import.meta.url));

/** Runs topics on as many processes as there are cores; the slow ones begin first. */
async function runTopics(topics: readonly number[]): Promise<TopicReport[]> {
  const waiting = [...topics].sort((a, b) => Number(TOPICS[a].quick) - Number(TOPICS[b].quick));
  const reports = new Map<number, TopicReport>();
  const work = async (): Promise<void> => {
    const worker = fork(WORKER, { execArgv: ['--import', 'tsx'], serialization: 'advanced' });
    for (let topic = waiting.shift(); topic !== undefined; topic = waiting.shift()) {
      const began = performance.now();
      reports.set(topic, await answerOf(worker, topic));
      const seconds = ((performance.now() - began) / 1000).toFixed(1);
      process.stderr.write(`${seconds.padStart(6)} s  ${TOPICS[topic].title}\n`);
    }
    worker.disconnect();
  };
  const workers = Math.min(os.availableParallelism(), waiting.length);
  await Promise.all(Array.from({ length: workers }, work));
  return topics.flatMap((topic) => reports.get(topic) ?? []);
}

function answerOf(worker: ChildProcess, topic: number): Promise<TopicReport> {
  return new Promise((resolve, reject) => {
    const ended = (code: number | null): void => {
      reject(new Error(`The process that ran '${TOPICS[topic].title}' ended with ${String(code)}.`));
    };
    worker.once('exit', ended);
    worker.once('message', (report) => {
      worker.off('exit', ended);
      resolve(report as TopicReport);
    });
    worker.send(topic);
  });
}

/** Six digits are more than a seed can tell, and keep the page's copy small. */
function compact(_key: string, value: unknown): unknown {
  return typeof value === 'number' && !Number.isInteger(value) ? Number(value.toPrecision(6)) : value;
}

function writeReport(report: Report, { outPath, keep }: ValidateOptions): void {
  mkdirSync(outPath, { recursive: true });
  const text = `${JSON.stringify(report, compact)}\n`;
  writeFileSync(path.join(outPath, 'report.json'), text);
  writeFileSync(path.join(outPath, 'report.md'), markdownOf(report));
  for (const topic of report.topics)
    for (const [k, plot] of topic.plots.entries())
      writeFileSync(path.join(outPath, plotFile(topic, k)), svgOf(plot));
  if (keep) writeFileSync(PAGE_COPY, text);
}

async function run(options: ValidateOptions): Promise<void> {
  const topics = [...TOPICS.keys()].filter(
    (k) => options.only === null || TOPICS[k].title.toLowerCase().includes(options.only.toLowerCase()),
  );
  if (topics.length === 0) {
    throw new Refused(
      `No topic has '${options.only ?? ''}' in its title. They are: ${TOPICS.map(({ title }) => title).join('; ')}.`,
    );
  }
  const report: Report = {
    madeOn: new Date().toISOString().slice(0, 10),
    modelVersion: MODEL_VERSION,
    command: 'npm run --silent validate',
    topics: await runTopics(topics),
  };
  writeReport(report, options);
  const { checks, passed, known, short } = tallyOf(report);
  if (options.json) {
    const rows = report.topics.flatMap(({ title, outcomes }) =>
      outcomes.map((outcome) => ({ ...outcome, topic: title })),
    );
    process.stdout.write(`${JSON.stringify(rows, compact)}\n`);
  } else {
    process.stdout.write(
      `${checks} checks: ${passed} pass, ${known} fall short for a known reason, ${short} fall short otherwise.\n` +
        `The report is in ${path.join(options.outPath, 'report.md')}.\n`,
    );
  }
  for (const { name, found, expected, tolerance } of report.topics
    .flatMap((topic) => topic.outcomes)
    .filter((outcome) => !outcome.pass))
    process.stderr.write(
      `falls short: ${name}: found ${found}, expected ${expected}, tolerance ${tolerance}\n`,
    );
  if (short > 0) process.exitCode = 1;
}

try {
  await run(validateOptions(process.argv.slice(2)));
} catch (error) {
  if (!(error instanceof Refused)) throw error;
  process.stderr.write(`${error.message}\n`);
  process.exitCode = 2;
}
