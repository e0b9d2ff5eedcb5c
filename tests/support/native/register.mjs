/** Lets Node load the TypeScript of this project as it is. */
import { register } from 'node:module';

register('./load.mjs', import.meta.url);
