import type { ReactiveController, ReactiveControllerHost } from 'lit';

interface Store<T> {
  readonly state: T;
  subscribe(listener: (state: T) => void): () => void;
}

/** Redraws its host when a store changes. */
export class StoreController<T> implements ReactiveController {
  private stop: (() => void) | null = null;

  constructor(
    private readonly host: ReactiveControllerHost & Pick<Element, 'isConnected'>,
    private readonly store: () => Store<T> | undefined,
    private readonly changed: (state: T) => void = () => undefined,
  ) {
    host.addController(this);
  }

  hostConnected(): void {
    this.listen();
  }

  hostUpdate(): void {
    // A store that comes by context arrives after the host was connected. A host that left the page with an update still due must not
    // listen again: nothing would ever stop it.
    if (this.host.isConnected) this.listen();
  }

  hostDisconnected(): void {
    this.stop?.();
    this.stop = null;
  }

  private listen(): void {
    const store = this.store();
    if (this.stop || !store) return;
    this.stop = store.subscribe((state) => {
      this.changed(state);
      this.host.requestUpdate();
    });
  }
}
