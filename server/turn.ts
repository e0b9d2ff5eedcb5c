/**
 * The next turn of the event loop: what has arrived meanwhile is read first. Without Node's own
 * way a message port is used, since a browser holds nested timers back for 4 ms.
 */
export const nextTurn: () => Promise<void> =
  typeof setImmediate === 'function'
    ? () => new Promise((resolve) => setImmediate(resolve))
    : portTurn();

function portTurn(): () => Promise<void> {
  const { port1, port2 } = new MessageChannel();
  const waiting: (() => void)[] = [];
  port1.onmessage = () => waiting.shift()?.();
  return () =>
    new Promise((resolve) => {
      waiting.push(resolve);
      port2.postMessage(null);
    });
}
