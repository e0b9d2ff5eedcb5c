/** `lamella/state`: how many of a plan's shots are ready, for clients that asked for it. */
import { type Connection, NotificationType } from 'vscode-languageserver';
import type { Core, PlanState } from '../shared/api/facade.ts';
import type { FileId } from '../shared/plan/place.ts';
import type { Documents } from './workspace/documents.ts';

export interface StateParams extends PlanState {
  readonly uri: string;
  /** Files that were read for it: its own, and those that it uses. */
  readonly files: number;
}

export const STATE = new NotificationType<StateParams>('lamella/state');

type Said = Omit<StateParams, 'uri'>;

export class States {
  readonly #connection: Connection;
  readonly #core: Core;
  readonly #documents: Documents;
  readonly #sent = new Map<FileId, Said>();

  constructor(connection: Connection, core: Core, documents: Documents) {
    this.#connection = connection;
    this.#core = core;
    this.#documents = documents;
  }

  /** Says what `file` has come to, where that is new. */
  update(file: FileId): void {
    if (!this.#documents.has(file) || this.#documents.unread(file)) return;
    const files = this.#core.reaches(file).length - this.#core.wanted(file).length;
    const state = { ...this.#core.state(file), files };
    const before = this.#sent.get(file);
    if (before && sameState(before, state)) return;
    this.#sent.set(file, state);
    void this.#connection.sendNotification(STATE, {
      uri: this.#documents.uri(file),
      ...state,
    });
  }

  closed(file: FileId): void {
    this.#sent.delete(file);
  }
}

const sameState = (a: Said, b: Said): boolean =>
  a.files === b.files &&
  a.day?.date === b.day?.date &&
  a.day?.kept === b.day?.kept &&
  a.day?.shots === b.day?.shots &&
  a.ready === b.ready &&
  a.shots === b.shots &&
  a.errors === b.errors &&
  a.takesToGo === b.takesToGo;
