/** The thread that reads clips: a path in, what it is out. */
import { parentPort } from 'node:worker_threads';
import { readClip } from './read-clip.ts';

parentPort?.on('message', (file: string) => {
  void readClip(file).then((reading) => parentPort?.postMessage(reading));
});
