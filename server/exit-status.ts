/** Exit statuses: a contract with scripts. */
export const NOTHING_FOUND = 0;
export const FOUND = 1;
export const COULD_NOT_RUN = 2;
