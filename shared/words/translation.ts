/**
 * A translation as it is handed in, key to text, and what is made of it: every text taken apart at
 * its places, and refused where these are not those of its key.
 */

/** Text, and numbers for the values that go in between. */
export type Template = readonly (string | number)[];

/** A text, or one for each way of counting, by the categories of CLDR: `one`, `few`, `other` … */
export type Form = Template | ReadonlyMap<string, Template>;

export interface Translation {
  /** Its tag by BCP 47: 'de'. */
  readonly language: string;
  readonly texts: ReadonlyMap<string, Form>;
  /** Which category a number counts as in the language. */
  readonly categoryOf: (count: number) => string;
}

interface ReadTranslation {
  readonly translation: Translation;
  /** Each names its key and what is wrong; these texts stay English. */
  readonly refused: readonly string[];
}

/** Of the categories every language has this one; it stands in for those that are not given. */
const OTHER = 'other';

const ofEnglish = (count: number): string => (count === 1 ? 'one' : OTHER);

/**
 * Reads `{ "Depth is {0}.": "Tiefe {0}." }`, as JSON gives it. Where a text depends on a number it
 * is `{ "one": "…", "few": "…", "other": "…" }`: the first number among its values decides.
 * @param language its tag by BCP 47; absent: texts without a language of their own
 * @param categoryOf the host's `Intl.PluralRules` of the language; absent: 1 is `one`
 */
export function readTranslation(
  given: unknown,
  language = 'en',
  categoryOf: (count: number) => string = ofEnglish,
): ReadTranslation {
  const refused: string[] = [];
  const texts = new Map<string, Form>();
  if (isRecord(given))
    for (const [key, text] of Object.entries(given)) {
      const form = readForm(key, text);
      if (typeof form === 'string') refused.push(`The translation of “${key}” ${form}.`);
      else texts.set(key, form);
    }
  else refused.push('The translation is no mapping of messages to texts.');
  return { translation: { language, texts, categoryOf }, refused };
}

/** The text for what is counted in `values`. */
export function formOf(
  form: Form,
  { categoryOf }: Translation,
  values: readonly (string | number)[],
): Template {
  if (!(form instanceof Map)) return form as Template;
  const count = values.map(countIn).find((number) => number !== undefined);
  return (count !== undefined && form.get(categoryOf(count))) || form.get(OTHER);
}

/** A number, or one that is said with its digits already: 3, "2.5". */
function countIn(value: string | number): number | undefined {
  if (typeof value === 'number') return value;
  return /^[+−-]?\d+(\.\d+)?$/.test(value) ? Number(value.replace('−', '-')) : undefined;
}

/** The text taken apart, or what is wrong with it. */
function readForm(key: string, text: unknown): Form | string {
  if (typeof text === 'string') return readTemplate(key, text);
  if (!isRecord(text)) return 'is no text';
  if (typeof text[OTHER] !== 'string') return `has no form \`${OTHER}\``;
  const forms = new Map<string, Template>();
  for (const [category, one] of Object.entries(text)) {
    const template = typeof one === 'string' ? readTemplate(key, one) : 'is no text';
    if (typeof template === 'string') return `${template} in its form \`${category}\``;
    forms.set(category, template);
  }
  return forms;
}

function readTemplate(key: string, text: string): Template | string {
  const template = takenApart(text);
  if (template === null) return 'has a brace that is not doubled and no place for a value';
  const wanted = placesIn(takenApart(key) ?? []);
  const there = placesIn(template);
  const lost = [...wanted].filter((place) => !there.has(place));
  if (lost.length > 0) return `lacks ${braced(lost)}`;
  const foreign = [...there].filter((place) => !wanted.has(place));
  return foreign.length > 0 ? `has ${braced(foreign)}, which the message has not` : template;
}

const placesIn = (template: Template): ReadonlySet<number> =>
  new Set(template.filter((piece) => typeof piece === 'number'));

const braced = (places: readonly number[]): string =>
  places.map((place) => `{${place}}`).join(', ');

/** null: a brace stands alone. */
function takenApart(text: string): Template | null {
  const template: (string | number)[] = [];
  for (const [piece, place] of text.matchAll(/\{\{|\}\}|\{(\d+)\}|[^{}]+|[{}]/g)) {
    if (place !== undefined) template.push(Number(place));
    else if (piece === '{' || piece === '}') return null;
    else template.push(piece === '{{' ? '{' : piece === '}}' ? '}' : piece);
  }
  return template;
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
