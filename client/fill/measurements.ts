/// <reference lib="dom" />
/** The boxes of the page of measurements, to type numbers into. */
import type { Day } from './day.ts';
import { make, showIn } from './dom.ts';

/** @returns brings the boxes up to what is kept */
export function measurementsOf(day: Day, section: Element): () => void {
  const fields = [...section.querySelectorAll('ol > li')].flatMap((card, index) => {
    const one = day.data.measurements[index];
    if (!one) return [];
    return [...card.querySelectorAll('.boxes > div')].flatMap((place, at) => {
      const known = one.boxes[at];
      const value = place.querySelector('dd');
      if (!known || !value) {
        // Room for a pen: remarks, and what only helps to calculate.
        place.classList.add('pen');
        return [];
      }
      const input = make('input', {
        type: 'text',
        inputmode: 'decimal',
        autocomplete: 'off',
        maxlength: 40,
        'aria-label': known.label,
      });
      input.addEventListener('input', () => day.setMeasured(one, known.key, input.value));
      value.prepend(input);
      return [{ input, one, key: known.key }];
    });
  });
  return () => {
    for (const { input, one, key } of fields) showIn(input, day.measured(one)[key] ?? '');
  };
}
