import { html, type TemplateResult } from 'lit';
import type { QuestionId } from '../../decisions/questions.ts';
import './better/better.ts';
import './copies/copies.ts';
import './graft/graft.ts';
import './ifs/ifs.ts';
import './when/when.ts';
import './how-many/how-many.ts';
import './open/open.ts';
import './trial/trial.ts';
import './unknowns/unknowns.ts';

/** A question of the page, drawn for the plan that is asked about. */
type Section = (plan: string) => TemplateResult;

/** The questions of “Would it pay to…?” in the order of the page; one that has no section yet is asked headless only. */
export const SECTIONS: Partial<Record<QuestionId, Section>> = {
  graft: (plan) => html`<oo-pay-graft .plan=${plan}></oo-pay-graft>`,
  when: (plan) => html`<oo-pay-when .plan=${plan}></oo-pay-when>`,
  trial: (plan) => html`<oo-pay-trial .plan=${plan}></oo-pay-trial>`,
  howmany: (plan) => html`<oo-pay-howmany .plan=${plan}></oo-pay-howmany>`,
  open: (plan) => html`<oo-pay-open .plan=${plan}></oo-pay-open>`,
  unknowns: (plan) => html`<oo-pay-unknowns .plan=${plan}></oo-pay-unknowns>`,
  better: (plan) => html`<oo-pay-better .plan=${plan}></oo-pay-better>`,
  copies: (plan) => html`<oo-pay-copies .plan=${plan}></oo-pay-copies>`,
  ifs: (plan) => html`<oo-pay-ifs .plan=${plan}></oo-pay-ifs>`,
};
