import { html } from 'lit';
import { describe, expect, it } from 'vitest';
import '../../../src/components/fields/form.ts';
import { OrchardPanel } from '../../../src/components/pages/orchard-panel.ts';
import { setAt } from '../../../src/model/edits.ts';
import { programmeSchema } from '../../../src/model/programme.ts';
import { breaches, choose, everything, find, mount, settled } from './mount.ts';
import { samplePear } from './sample.ts';

/** The panel with a document that takes every edit a moment later, as on the page. */
async function open(...start: string[]): Promise<OrchardPanel> {
  const panel = Object.assign(new OrchardPanel(), { programme: samplePear(), start });
  panel.addEventListener('oo-change', ({ detail }) => {
    const next = programmeSchema.parse(setAt(panel.programme, detail.path, detail.value));
    void Promise.resolve().then(() => (panel.programme = next));
  });
  await mount(html`${panel}`);
  return panel;
}

const section = (panel: OrchardPanel, key: string): HTMLElement => find(panel.renderRoot, HTMLElement, `details[data-key="${key}"]`);
const press = async (panel: OrchardPanel, name: string): Promise<void> => {
  const button = everything(panel.renderRoot).find((each) => each instanceof HTMLButtonElement && each.textContent.trim() === name);
  if (!(button instanceof HTMLButtonElement)) throw new Error(`No button “${name}”.`);
  button.focus();
  button.click();
  await settled();
  await new Promise((done) => setTimeout(done, 30));
  await settled();
};
const active = (panel: OrchardPanel): string | undefined => panel.shadowRoot?.activeElement?.closest<HTMLElement>('details')?.dataset['key'];

describe('the list of everything in the programme', () => {
  it('says that the first garden is home', async () => {
    const panel = await open('gardens');
    const gardens = section(panel, 'gardens');
    expect(find(gardens, HTMLElement, '.help').textContent).toMatch(/^The first garden is home/);
    const lines = [...gardens.querySelectorAll('.entry > summary')].map((each) => each.textContent.replace(/\s+/g, ' ').trim());
    expect(lines).toEqual(['Home home', 'The mill']);
  });

  it('goes to what it adds, and to a neighbour of what it takes out', async () => {
    const panel = await open('gardens', 'gardens/home', 'gardens/mill');
    await press(panel, 'Add a garden');
    expect(active(panel)).toBe('gardens/new-garden');
    await press(panel, 'Remove New garden');
    expect(active(panel)).toBe('gardens/mill');
    await press(panel, 'Remove Home');
    expect(active(panel)).toBe('gardens/mill');
    await press(panel, 'Remove The mill');
    expect(active(panel)).toBe('gardens');
    expect(panel.programme.gardens).toEqual([]);
  });

  it('changes the type of a trait in place, and back again', async () => {
    const panel = await open('traits', 'traits/sweet');
    expect(await breaches(panel)).toEqual([]);
    const type = (): HTMLSelectElement => find(section(panel, 'traits/sweet'), HTMLSelectElement, '.type select');
    expect([...type().options].map((option) => option.textContent.trim())).toEqual(['shown or not', 'measured']);
    choose(type(), 'shown');
    await settled();
    expect(panel.programme.traits[1]).toMatchObject({ type: 'shown', id: 'sweet', name: 'Sweetness' });
    expect(panel.programme.trees[1]?.values).toEqual({});
    expect(type().value).toBe('shown');
    choose(type(), 'measured');
    await settled();
    expect(panel.programme.traits[1]).toMatchObject({ type: 'measured', id: 'sweet', name: 'Sweetness' });
  });

  it('does not offer a type that has nothing to rest on yet', async () => {
    const panel = await open('traits', 'traits/sweet');
    panel.programme = { ...panel.programme, genes: [] };
    await settled();
    const [shown] = find(section(panel, 'traits/sweet'), HTMLSelectElement, '.type select').options;
    expect([shown?.disabled, shown?.textContent.trim()]).toEqual([true, 'shown or not (needs a gene first)']);
  });
});
