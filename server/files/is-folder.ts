import { stat } from 'node:fs/promises';

export const isFolder = (folder: string): Promise<boolean> =>
  stat(folder).then(
    (found) => found.isDirectory(),
    () => false,
  );
