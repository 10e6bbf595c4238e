import { emptyMapping } from "@/lib/intake";
import type { Answer, Asked, Name, Said } from "../_talk/messages";
import { recallMapping, rememberMapping } from "./kept-words";
import type { IntakeState, Working } from "./state";
import { troubleOf } from "./trouble";
import { type Errand, openWorker, Stopped, type WorkerDoor } from "./worker-door";

export const startState: IntakeState = {
  able: null,
  door: null,
  arrived: [],
  key: { is: "shut" },
  said: { mapping: emptyMapping, rowAnswers: [], coded: [] },
  corrections: "keep",
  view: null,
  stale: false,
  working: null,
  trouble: null,
  receipt: null,
  spoken: "",
};

const patienceMs = 250;

/** The state of the page and the worker behind it. What is done with them stands in the files beside this one. */
export class IntakeStore {
  state: IntakeState = startState;
  private worker: WorkerDoor | null = null;
  private errand: { readonly what: Working["what"]; readonly stop: () => void } | null = null;
  private readonly listeners = new Set<() => void>();

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };
  readonly read = (): IntakeState => this.state;

  set(change: Partial<IntakeState>): void {
    this.state = { ...this.state, ...change };
    for (const listener of this.listeners) listener();
  }

  /** Starts the worker, and recalls what this tab was told before a reload. */
  start(): void {
    const able = window.isSecureContext && crypto.subtle !== undefined;
    this.set({ able, said: { ...startState.said, mapping: recallMapping() } });
    if (!able) return;
    this.worker = openWorker();
    void this.askDoor();
  }

  end(): void {
    this.worker?.end();
    this.worker = null;
  }

  async askDoor(): Promise<void> {
    const door = await this.quietly("door", {});
    if (door) this.set({ door });
  }

  /** A question answered at once. What fails is shown as trouble, and answered with null. */
  async quietly<N extends Name>(name: N, asked: Asked<N>): Promise<Answer<N> | null> {
    try {
      return (await this.worker?.ask(name, asked).answer) ?? null;
    } catch (error) {
      this.set({ trouble: troubleOf(error) });
      return null;
    }
  }

  /** Long work: its progress is shown, it can be stopped, and only one is in hand. */
  async atWork<N extends Name>(what: Working["what"], name: N, asked: Asked<N>): Promise<Answer<N> | null> {
    if (!this.worker) return null;
    this.errand?.stop();
    const errand: Errand<N> = this.worker.ask(name, asked, (pace) => {
      if (this.errand === mine) this.set({ working: { what, pace } });
    });
    const mine = { what, stop: errand.stop };
    this.errand = mine;
    this.set({ working: { what, pace: null }, trouble: null });
    try {
      return await errand.answer;
    } catch (error) {
      if (this.errand === mine) this.set({ trouble: troubleOf(error), spoken: troubleOf(error) });
      return null;
    } finally {
      if (this.errand === mine) {
        this.errand = null;
        this.set({ working: null });
      }
    }
  }

  /** Stops the work in hand. A file of text can't be left half read: a worker that doesn't hear is given up, with what it held. */
  stop(): void {
    const { errand } = this;
    errand?.stop();
    if (errand?.what === "arrive") setTimeout(() => this.errand === errand && this.giveUp(), patienceMs);
  }

  private giveUp(): void {
    this.end();
    this.worker = openWorker();
    this.set({ arrived: [], key: { is: "shut" }, view: null, working: null, trouble: troubleOf(new Stopped()) });
    void this.askDoor();
  }

  say(said: Partial<Said>): void {
    this.set({ said: { ...this.state.said, ...said }, stale: true, receipt: null });
    if (said.mapping) rememberMapping(said.mapping);
  }
}
