import { createContext } from '@lit/context';
import type { AnswersStore } from '../state/answers-store.ts';
import type { LessonsStore } from '../state/lessons/lessons-store.ts';
import type { ProgrammeStore } from '../state/programme-store.ts';
import type { RunsStore } from '../state/runs-store.ts';

/** Handles of the stores; their contents are read through StoreController. */
export const programmeContext = createContext<ProgrammeStore>(Symbol('programme'));
export const runsContext = createContext<RunsStore>(Symbol('runs'));
export const answersContext = createContext<AnswersStore>(Symbol('answers'));
export const lessonsContext = createContext<LessonsStore>(Symbol('lessons'));
