import type { TemplateResult } from 'lit';
import type { QuestionId } from '../../decisions/questions.ts';

/** A question of the page, drawn for the plan that is asked about. */
type Section = (plan: string) => TemplateResult;

/** The questions of “Would it pay to…?” in the order of the page; one that has no section yet is asked headless only. */
export const SECTIONS: Partial<Record<QuestionId, Section>> = {};
