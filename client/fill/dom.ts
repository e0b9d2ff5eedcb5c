/// <reference lib="dom" />
/** Elements, and texts in them: no text is ever read as markup. */

type Attributes = Readonly<Record<string, string | number | boolean>>;

export function make<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Attributes = {},
  ...children: readonly (Node | string)[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes))
    if (value !== false) element.setAttribute(name, value === true ? '' : String(value));
  element.append(...children);
  return element;
}

export function button(label: string, pressed: () => void, kind = ''): HTMLButtonElement {
  const made = make('button', { type: 'button', class: kind }, label);
  made.addEventListener('click', pressed);
  return made;
}

/** What can't be undone takes a second tap, within a few seconds. */
export function sureButton(label: string, sure: string, pressed: () => void): HTMLButtonElement {
  const calm = (): void => {
    made.textContent = label;
    made.classList.remove('sure');
  };
  const made = button(
    label,
    () => {
      if (made.classList.contains('sure')) {
        calm();
        pressed();
        return;
      }
      made.textContent = sure;
      made.classList.add('sure');
      setTimeout(calm, 4000);
    },
    'quiet',
  );
  return made;
}

interface Box {
  readonly label: HTMLLabelElement;
  readonly input: HTMLInputElement;
}

/** A field with its label above it. */
export function box(label: string, attributes: Attributes, typed: (text: string) => void): Box {
  const input = make('input', { type: 'text', autocomplete: 'off', ...attributes });
  input.addEventListener('input', () => typed(input.value));
  return { label: make('label', { class: 'box' }, make('span', {}, label), input), input };
}

/** What is being typed into stays as it is. */
export function showIn(input: HTMLInputElement, text: string): void {
  if (input !== document.activeElement && input.value !== text) input.value = text;
}

/** Written only where it changes: a screen reader says what is written. */
export function say(element: Element, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}

/** "Take {0}" with what stands for it. */
export const filled = (words: string, ...values: readonly (string | number)[]): string =>
  words.replace(/\{(\d)\}/g, (_, index) => String(values[Number(index)] ?? ''));

/** "1:05" */
export const clock = (seconds: number): string => {
  const whole = Math.max(0, Math.floor(seconds));
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
};

export const secondsSince = (at: string): number => (Date.now() - Date.parse(at)) / 1000;
