/** As one line of ASCII: nothing in it acts, wherever it stands. */
export const asciiJson = (value: unknown): string =>
  JSON.stringify(value).replace(
    /[^ -~]/g,
    (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
