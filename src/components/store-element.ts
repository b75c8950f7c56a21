import { consume } from '@lit/context';
import { LitElement } from 'lit';
import { state } from 'lit/decorators.js';
import type { ProgrammeStore } from '../state/programme-store.ts';
import type { RunsStore } from '../state/runs-store.ts';
import { programmeContext, runsContext } from './contexts.ts';
import { StoreController } from './store-controller.ts';

/** A page or panel that shows the document and its results, and redraws when either changes. */
export abstract class StoreElement extends LitElement {
  @consume({ context: programmeContext, subscribe: true })
  @state()
  protected programmes!: ProgrammeStore;

  @consume({ context: runsContext, subscribe: true })
  @state()
  protected runs!: RunsStore;

  constructor() {
    super();
    new StoreController(this, () => this.programmes);
    new StoreController(this, () => this.runs);
  }
}
