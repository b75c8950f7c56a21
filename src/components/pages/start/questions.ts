import { html, nothing, type TemplateResult } from 'lit';
import { kindOf, kinds } from '../../../catalogue/catalogue.ts';
import type { Estimate } from '../../../model/estimate.ts';
import { sourceOf } from '../../../model/estimate-forms.ts';
import { spreadOf } from '../../../model/estimate-spread.ts';
import { meanOf } from '../../../model/mean.ts';
import type { Programme } from '../../../model/programme.ts';
import { fields, MOST_PARTNERS, type CountName } from '../../../start/answers.ts';
import { askedCross, hasWeak } from '../../../start/crosses.ts';
import { knownRules } from '../../../start/inheritance.ts';
import { cautions } from '../../../text/app.ts';
import { saidOf, shareInWords, sourceWords } from '../../../text/fields.ts';
import { start } from '../../../text/start.ts';
import { knownInheritance } from './known.ts';
import { answer, together, type Hands, type Sheet } from './sheet.ts';

const KINDS = kinds.map(({ id, name }) => ({ id, name }));
const optional = {
  hits: fields.count.hits.optional(),
  of: fields.count.of.optional(),
  springs: fields.count.springs,
  weakMonths: fields.known.weakMonths.optional(),
  own: fields.goal.own.optional(),
};
/** How alike the flowers of one spring are (docs/model.md §6): the programme’s own default. */
const SPRING_LUCK = 0.1;

const quiet = (...words: readonly string[]): TemplateResult => html`<p class="caution">${words.join(' ')}</p>`;

export function aboutTree(sheet: Sheet, hands: Hands): TemplateResult {
  const { tree } = sheet.answers;
  return html`${answer(sheet, fields.tree.name, ['tree', 'name'], tree.name)}
  ${answer(sheet, fields.tree.kind, ['tree', 'kind'], tree.kind, { entries: KINDS })} ${answer(sheet, fields.tree.trait, ['tree', 'trait'], tree.trait)}
  ${knownInheritance(sheet.answers, hands)} ${answer(sheet, fields.tree.showed, ['tree', 'showed'], tree.showed)}
  ${answer(sheet, fields.tree.seasons, ['tree', 'seasons'], tree.seasons)} ${answer(sheet, fields.tree.fruit, ['tree', 'fruit'], tree.fruit)}
  ${answer(sheet, fields.tree.standing, ['tree', 'standing'], tree.standing)}`;
}

function partner(sheet: Sheet, place: number, { removePartner }: Hands): TemplateResult {
  const { draft, answers } = sheet;
  const { name = '', kind = answers.tree.kind, shows = 'no' } = draft.partners[place] ?? {};
  const at = (key: string) => ['partners', place, key] as const;
  const other = kind !== answers.tree.kind && kindOf(kind) && kindOf(answers.tree.kind);
  const basis = other ? askedCross({ ...answers, partners: [{ name, kind, shows }] })?.basis : undefined;
  return html`<fieldset class="partner">
    <legend>${start.partner(place + 1)}</legend>
    ${answer(sheet, fields.partners.name, at('name'), name, answers.way.how === 'open' ? { help: start.noPartnerNeeded } : {})}
    ${answer(sheet, fields.partners.kind, at('kind'), kind, { entries: KINDS, remark: basis ? start.pair[basis] : '' })}
    ${answer(sheet, fields.partners.shows, at('shows'), shows, { label: start.shows(answers.tree.trait) })}
    ${draft.partners.length > 1 ? html`<button type="button" class="plain" @click=${() => removePartner(place)}>${start.removePartner(name)}</button>` : nothing}
  </fieldset>`;
}

export function aboutCross(sheet: Sheet, hands: Hands): TemplateResult {
  const { draft, answers } = sheet;
  const kind = kindOf(answers.tree.kind)?.name ?? '';
  return html`${draft.partners.map((_, place) => partner(sheet, place, hands))}
  ${draft.partners.length < MOST_PARTNERS ? html`<p><button type="button" class="plain" @click=${hands.addPartner}>${start.addPartner}</button></p>` : nothing}
  ${answer(sheet, fields.way.how, ['way', 'how'], answers.way.how)}
  ${answer(sheet, fields.way.neighbours, ['way', 'neighbours'], answers.way.neighbours, { label: start.neighbours(kind), help: start.neighboursHelp })}
  ${quiet(cautions.moving, cautions.protected)}`;
}

export function aboutMeans(sheet: Sheet): TemplateResult {
  const { means } = sheet.answers;
  return html`${(['places', 'hours', 'bloomDays', 'hoursADay', 'firstSpring', 'lastYear'] as const).map((key) =>
    answer(sheet, fields.means[key], ['means', key], means[key]),
  )}`;
}

const inWords = (figure: Estimate, luck: number): string => {
  const spread = spreadOf(figure, luck);
  return spread ? shareInWords(spread.mean, spread.low, spread.high) : start.aboutShare(meanOf(figure));
};

function counted(sheet: Sheet, name: CountName, figure: Estimate, cross: string): TemplateResult {
  const words = start.counts[name];
  const own = sheet.answers.counts[name];
  const source = sourceOf(figure);
  const said = own
    ? start.fromCount(inWords({ hits: Math.min(own.hits, own.of), of: own.of, lots: own.springs }, name === 'weak' ? 0 : SPRING_LUCK))
    : start.leftEmpty(inWords(figure, 0), source ? saidOf(source) : sourceWords.guess);
  const at = (key: string) => ['counts', name, key] as const;
  return together(sheet, words.title(cross), said, [
    { schema: optional.hits, path: at('hits'), label: words.hits },
    { schema: optional.of, path: at('of'), label: words.of },
    ...(own && name !== 'weak' ? [{ schema: optional.springs, path: at('springs'), filled: 1, label: start.springs }] : []),
  ]);
}

export function aboutCounts(sheet: Sheet): TemplateResult {
  const { tree, partners, rule } = sheet.answers;
  const asked = askedCross(sheet.answers)?.cross;
  const pair = `${tree.name} × ${partners[0]?.name ?? kindOf(tree.kind)?.name ?? ''}`;
  const rules = [
    ...(['unknown', 'one', 'two'] as const).map((id) => ({ id, name: start.rules[id] })),
    ...knownRules(tree.kind).map(({ id, trait }) => ({ id, name: start.rules.known(trait.name) })),
  ];
  const known = knownRules(tree.kind).find(({ id }) => id === rule)?.trait;
  const help =
    rule === 'one' || rule === 'two' || rule === 'unknown'
      ? start.ruleHelp[rule]
      : known
        ? `${known.summary} ${start.restsOn(saidOf(known.source), known.source.note)}`
        : '';
  return html`${asked ? html`${counted(sheet, 'set', asked.set, pair)} ${counted(sheet, 'germination', asked.germination, pair)}` : nothing}
  ${
    asked?.weakness && hasWeak(sheet.answers)
      ? html`${counted(sheet, 'weak', asked.weakness.share, pair)}
        ${answer(sheet, optional.weakMonths, ['known', 'weakMonths'], undefined, { label: start.weakMonths })}`
      : nothing
  }
  ${answer(sheet, fields.known.rule, ['known', 'rule'], rule, { label: start.rule(tree.trait), help, entries: rules })}`;
}

/** The three plans by name, as they will stand. */
const preview = ({ plans }: Programme): TemplateResult =>
  html`<div class="preview">
    <h2>${start.plans}</h2>
    <ol>
      ${plans.map(
        ({ mark, name, note }) =>
          html`<li data-mark=${mark}>
            <span class="mark" aria-hidden="true">${mark}</span><span><b>${name}</b><small>${note ?? ''}</small></span>
          </li>`,
      )}
    </ol>
  </div>`;

export function aboutGoal(sheet: Sheet, programme: Programme | undefined): TemplateResult {
  const { goal, tree } = sheet.answers;
  const measures = (['none', 'taste', 'size', 'keeping'] as const).map((id) => ({ id, name: start.measures[id] }));
  const unit = goal.measure === 'none' ? '' : start.units[goal.measure];
  return html`${answer(sheet, fields.goal.crops, ['goal', 'crops'], goal.crops)}
  ${answer(sheet, fields.goal.shows, ['goal', 'shows'], goal.shows, { label: start.shown(tree.trait) })}
  ${answer(sheet, fields.goal.trees, ['goal', 'trees'], goal.trees)}
  ${answer(sheet, fields.goal.measure, ['goal', 'measure'], goal.measure, { label: start.measure, entries: measures })}
  ${
    goal.measure === 'none'
      ? nothing
      : html`${answer(sheet, fields.goal.ordinary, ['goal', 'ordinary'], goal.ordinary, { label: start.ordinary(unit) })}
        ${answer(sheet, fields.goal.least, ['goal', 'least'], goal.least, { label: start.least(unit) })}
        ${answer(sheet, optional.own, ['goal', 'own'], undefined, { label: start.own(tree.name, unit), help: start.ownHelp })}`
  }
  ${programme ? preview(programme) : nothing} ${quiet(cautions.always, cautions.kernels)}`;
}
