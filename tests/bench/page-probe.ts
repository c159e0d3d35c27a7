/**
 * Runs in the page before its own scripts and writes down when pictures are asked for and drawn, when months come from
 * the engine, when the page is blocked and how its frames follow on each other. It reads what page and workers say to
 * each other (comlink's messages, workers/protocol.ts) and changes nothing.
 */
export interface Drawing {
  readonly month: number;
  readonly askedMs: number;
  readonly drawnMs: number;
  /** Copied to the picture's worker; 0 where it has the frame already. */
  readonly bytes: number;
}

export interface MonthCome {
  readonly month: number;
  readonly bytes: number;
  /** From the engine's post to the page's hearing; null where the engine's clock was not asked. */
  readonly sentMs: number | null;
  readonly cameMs: number;
}

export interface Blocked {
  readonly fromMs: number;
  readonly ms: number;
}

export interface ProbeLog {
  drawings: Drawing[];
  months: MonthCome[];
  blocked: Blocked[];
  /** Times of the page's frames, from the call of watchFrames on: asking for frames costs a little. */
  frames: number[];
  watchFrames(): void;
}

declare global {
  var benchLog: ProbeLog;
}

interface FrameLike {
  readonly month: number;
  readonly [part: string]: unknown;
}

interface Said {
  readonly id?: string;
  readonly path?: readonly string[];
  readonly argumentList?: readonly { readonly value?: unknown }[];
  readonly sentAt?: number;
}

export function probe(): void {
  const tick = (now: number): void => {
    log.frames.push(now);
    requestAnimationFrame(tick);
  };
  const log: ProbeLog = {
    drawings: [],
    months: [],
    blocked: [],
    frames: [],
    watchFrames: () => void requestAnimationFrame(tick),
  };
  globalThis.benchLog = log;

  const bytesOf = (frame: FrameLike): number =>
    Object.values(frame).reduce<number>(
      (sum, part) => sum + (ArrayBuffer.isView(part) ? part.byteLength : 0),
      0,
    );
  const isFrame = (value: unknown): value is FrameLike =>
    typeof value === 'object' && value !== null && 'label' in value && 'month' in value;

  const asked = new Map<string, { month: number; askedMs: number; bytes: number }>();
  let monthHeld = -1;

  const PlainWorker = globalThis.Worker;
  globalThis.Worker = class extends PlainWorker {
    constructor(url: string | URL, options?: WorkerOptions) {
      super(url, options);
      this.addEventListener('message', ({ data }: MessageEvent<Said>) => {
        const drawing = asked.get(data.id ?? '');
        if (drawing) log.drawings.push({ ...drawing, drawnMs: performance.now() });
      });
    }

    override postMessage(message: Said, given?: Transferable[] | StructuredSerializeOptions): void {
      if (message.path?.[0] === 'show' && message.id !== undefined) {
        const grown = message.argumentList?.[2]?.value;
        let bytes = 0;
        if (typeof grown === 'object' && grown !== null && 'frame' in grown) {
          monthHeld = isFrame(grown.frame) ? grown.frame.month : -1;
          bytes = isFrame(grown.frame) ? bytesOf(grown.frame) : 0;
        }
        asked.set(message.id, { month: monthHeld, askedMs: performance.now(), bytes });
      }
      if (Array.isArray(given)) super.postMessage(message, given);
      else super.postMessage(message, given);
    }
  };

  const PlainChannel = globalThis.MessageChannel;
  globalThis.MessageChannel = class extends PlainChannel {
    constructor() {
      super();
      this.port1.addEventListener('message', ({ data }: MessageEvent<Said>) => {
        if (data.path?.[0] !== 'month') return;
        const frame = data.argumentList?.[1]?.value;
        if (!isFrame(frame)) return;
        log.months.push({
          month: frame.month,
          bytes: bytesOf(frame),
          sentMs: data.sentAt === undefined ? null : data.sentAt - performance.timeOrigin,
          cameMs: performance.now(),
        });
      });
    }
  };

  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) log.blocked.push({ fromMs: entry.startTime, ms: entry.duration });
  }).observe({ type: 'longtask', buffered: true });
}

/** Put before the engine's worker: its posts then carry the time at which they were sent. */
export const SENT_AT = `{
  const post = MessagePort.prototype.postMessage;
  MessagePort.prototype.postMessage = function (message, given) {
    if (message?.path) message.sentAt = performance.timeOrigin + performance.now();
    return post.call(this, message, given);
  };
}
`;
