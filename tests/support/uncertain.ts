/** Plans whose shots are not known exactly, and what is known of them. */
import { UncertainShot } from '../../shared/figures/uncertain.ts';
import { Analysis } from '../../shared/workspace/analysis.ts';
import { Store } from '../../shared/workspace/store.ts';
import { PLAN, ROOT } from './plans.ts';

/** The shots of a plan that can be worked out, by name. */
export function uncertainIn(text: string): ReadonlyMap<string, UncertainShot> {
  const store = new Store();
  const analysis = new Analysis(store, { rootOf: () => ROOT });
  store.give(PLAN, text);
  return new Map(
    analysis.shots(PLAN).flatMap((id) => {
      const [bench, figures] = [analysis.bench(PLAN, id), analysis.figures(PLAN, id)];
      return bench && figures ? [[bench.shot, new UncertainShot({ bench, figures })] as const] : [];
    }),
  );
}
