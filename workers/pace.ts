/**
 * One turn of the message loop, so that a long run hears a cancel between two slices.
 * A message of our own is due at once; timers are held back to 4 ms and more, and longer in hidden pages.
 */
const channel = new MessageChannel();
const waiting: (() => void)[] = [];
channel.port1.onmessage = () => waiting.shift()?.();

export function breathe(): Promise<void> {
  return new Promise((resolve) => {
    waiting.push(resolve);
    channel.port2.postMessage(null);
  });
}
