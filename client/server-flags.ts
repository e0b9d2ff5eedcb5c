/**
 * How Node starts the language server. Opening a long plan makes much that stays; with V8's own
 * small nursery it is copied about more often than it is worth: a sixth of the time.
 */
export const SERVER_FLAGS = ['--min-semi-space-size=32', '--max-semi-space-size=64'] as const;
