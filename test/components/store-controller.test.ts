import { html, LitElement } from 'lit';
import { describe, expect, it } from 'vitest';
import { StoreController } from '../../src/components/store-controller.ts';

/** A store that counts who listens. */
class Counter {
  state = 0;
  readonly listeners = new Set<(state: number) => void>();
  subscribe(listener: (state: number) => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }
}

class Reader extends LitElement {
  store: Counter | undefined;
  constructor() {
    super();
    new StoreController(this, () => this.store);
  }
  protected override render() {
    return html`${this.store?.state}`;
  }
}
customElements.define('test-reader', Reader);

function reader(store: Counter | undefined): Reader {
  const made = new Reader();
  made.store = store;
  return made;
}

describe('StoreController', () => {
  it('listens to a store that arrives after its host, and stops when the host leaves', async () => {
    const store = new Counter();
    const host = reader(undefined);
    document.body.append(host);
    await host.updateComplete;
    expect(store.listeners.size).toBe(0);
    host.store = store;
    host.requestUpdate();
    await host.updateComplete;
    expect(store.listeners.size).toBe(1);
    host.remove();
    expect(store.listeners.size).toBe(0);
  });

  it('does not listen again for an update that was due when the host left; it does when the host comes back', async () => {
    const store = new Counter();
    const host = reader(store);
    document.body.append(host);
    await host.updateComplete;
    host.requestUpdate();
    host.remove();
    await host.updateComplete;
    expect(store.listeners.size).toBe(0);
    document.body.append(host);
    expect(store.listeners.size).toBe(1);
    host.remove();
  });
});
