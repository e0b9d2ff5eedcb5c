import type { FileId } from '../../shared/plan/place.ts';

/** The way that findings take to the client: sent to it, or asked for by it. */
export interface DiagnosticsChannel {
  /** `file` was looked at; `typed`: because the client changed its text. */
  update(file: FileId, typed: boolean): void;
  /** All of `known` was looked at; what was said of any other file is void. */
  finish(known: ReadonlySet<FileId>): void;
  /** No more answers. */
  end(): void;
}
