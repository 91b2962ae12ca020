import type { Context } from './context.ts';

/** Called with the chain's newest sequence number whenever somebody, in whichever server process, changed the job. */
type Listener = (seq: number) => void;

const EVERY_MS = 500;

/**
 * Tells who watches a job that it changed. One question to the database every half second while anybody watches,
 * which serves SQLite, PostgreSQL and several server processes alike.
 */
export class ChangeFeed {
  readonly #context: Context;
  readonly #watchers = new Map<string, Set<Listener>>();
  readonly #seen = new Map<string, number>();
  #timer: NodeJS.Timeout | null = null;
  #asking = false;

  constructor(context: Context) {
    this.#context = context;
  }

  /** Watches a job from this sequence number on; the answer stops watching. */
  watch(projectId: string, since: number, listener: Listener): () => void {
    if (!this.#seen.has(projectId)) this.#seen.set(projectId, since);
    const listeners = this.#watchers.get(projectId) ?? new Set();
    listeners.add(listener);
    this.#watchers.set(projectId, listeners);
    this.#timer ??= setInterval(() => void this.#ask(), EVERY_MS);
    return () => this.#leave(projectId, listener);
  }

  close(): void {
    if (this.#timer !== null) clearInterval(this.#timer);
    this.#timer = null;
    this.#watchers.clear();
  }

  #leave(projectId: string, listener: Listener): void {
    const listeners = this.#watchers.get(projectId);
    listeners?.delete(listener);
    if (listeners?.size === 0) {
      this.#watchers.delete(projectId);
      this.#seen.delete(projectId);
    }
    if (this.#watchers.size === 0) this.close();
  }

  async #ask(): Promise<void> {
    if (this.#asking) return;
    this.#asking = true;
    try {
      const chains = [...this.#watchers.keys()];
      const heads = await this.#context.database.db.auditEntry.groupBy({
        by: ['chain'],
        where: { chain: { in: chains } },
        _max: { seq: true },
      });
      for (const head of heads) this.#tell(head.chain, head._max.seq ?? 0);
    } catch {
      // The database is away for a moment: the next question tells what was missed.
    } finally {
      this.#asking = false;
    }
  }

  #tell(projectId: string, seq: number): void {
    const before = this.#seen.get(projectId);
    this.#seen.set(projectId, seq);
    if (before === undefined || before === seq) return;
    for (const listener of this.#watchers.get(projectId) ?? []) listener(seq);
  }
}
