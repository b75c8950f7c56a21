import { createContext } from '@lit/context';
import type { ProgrammeStore } from '../state/programme-store.ts';
import type { RunsStore } from '../state/runs-store.ts';

/** Handles of the stores; their contents are read through StoreController. */
export const programmeContext = createContext<ProgrammeStore>(Symbol('programme'));
export const runsContext = createContext<RunsStore>(Symbol('runs'));
