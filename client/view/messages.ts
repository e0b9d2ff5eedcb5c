/** What extension and live view say to each other. */
import type { PageFrame } from '../../shared/api/frame.ts';

export type ToView =
  | {
      readonly kind: 'sheet';
      /** There in the first message: whatever was shown before is void. */
      readonly patterns?: string;
      readonly head: string;
      readonly shots: readonly { readonly name: string; readonly html?: string }[];
    }
  /** What the text's cursor stands in. */
  | {
      readonly kind: 'follow';
      readonly shot: string | null;
      readonly key: string | null;
      readonly cut: string | null;
    }
  /** null: there is nothing to draw of the shot. */
  | { readonly kind: 'frame'; readonly shot: string; readonly frame: PageFrame | null };

export type FromView =
  | { readonly kind: 'ready' }
  | { readonly kind: 'go'; readonly shot: string; readonly key: string }
  /** A value that was chosen in a drawing, as the plan writes it. */
  | {
      readonly kind: 'set';
      readonly shot: string;
      readonly key: string;
      readonly value: string;
    }
  /** A check was ticked or opened again; shot null: a check of the day. */
  | {
      readonly kind: 'tick';
      readonly shot: string | null;
      readonly check: string;
      readonly done: boolean;
    }
  | { readonly kind: 'go-to-cut'; readonly cut: string };
