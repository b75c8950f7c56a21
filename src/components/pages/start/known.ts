import { html, nothing, type TemplateResult } from 'lit';
import { kindOf } from '../../../catalogue/catalogue.ts';
import type { Answers } from '../../../start/answers.ts';
import { knownRules } from '../../../start/inheritance.ts';
import { meantBy, plainRule, type KnownRule } from '../../../start/known-traits.ts';
import { knownInWords, ruleInWords } from '../../../text/catalogue.ts';
import { start } from '../../../text/start.ts';
import { badge } from '../../fields/badge.ts';
import type { Hands } from './sheet.ts';

const { knownIn } = start;

/** What the catalogue knows, in plain words, and what it rests on. */
const said = (kind: string, { trait }: KnownRule): TemplateResult =>
  html`<p><b>${knownInWords(kind, trait.name)}</b> ${ruleInWords[plainRule(trait)]}</p>
    <p class="rests">${badge(trait.source)} <span>${trait.summary} ${trait.source.note}</span></p>`;

/**
 * Under the name of the rare trait: what is known of its inheritance in that kind, to be taken or left. Nothing where the catalogue
 * knows no trait of the kind.
 */
export function knownInheritance({ tree, rule }: Answers, { takeKnown, dropKnown }: Hands): TemplateResult | typeof nothing {
  const rules = knownRules(tree.kind);
  if (rules.length === 0) return nothing;
  const kind = kindOf(tree.kind)?.name ?? '';
  const taken = rules.find(({ id }) => id === rule);
  if (taken)
    return html`<div class="known">
      ${said(kind, taken)}
      <p class="take">${knownIn.taken} <button type="button" class="plain" @click=${dropKnown}>${knownIn.drop}</button></p>
    </div>`;
  const meant = meantBy(tree.kind, tree.trait);
  if (meant.length > 0)
    return html`<div class="known">
      ${meant.map(
        (known) =>
          html`${said(kind, known)}
            <p class="take">
              <button type="button" aria-label=${knownIn.takeOf(known.trait.name)} @click=${() => takeKnown(known)}>${knownIn.take}</button>
              <span class="quiet">${knownIn.orNot}</span>
            </p>`,
      )}
    </div>`;
  return html`<details class="known">
    <summary>${knownIn.more(kind, rules.length)}</summary>
    <p class="quiet">${tree.trait === '' ? knownIn.choose : knownIn.isIt(tree.trait)}</p>
    <ul>
      ${rules.map((known) => html`<li><button type="button" @click=${() => takeKnown(known)}>${known.trait.name}</button></li>`)}
    </ul>
  </details>`;
}
