import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { afterEach, describe, expect, it } from 'vitest';
import { headingsOf } from '../../../src/components/charts/picture-words.ts';
import { fileNameOf } from '../../../src/components/charts/table-file.ts';
import { pictureBlob } from '../../../src/components/pictures-out.ts';
import { LIGHT } from '../../../src/components/pictures-out/light.ts';
import { pictureOf } from '../../../src/components/pictures-out/save.ts';
import '../../../src/styles/page.ts';

/** A picture with all that pictures are made of: words, a letter on a disc, a drawing, a table, and things that are none of it. */
@customElement('test-picture')
class TestPicture extends LitElement {
  static override styles = css`
    .resting {
      opacity: 0.5;
    }
    .name {
      color: var(--plan-a);
      font: italic 20px var(--serif);
    }
    circle {
      fill: var(--plan-b);
    }
    line {
      stroke: color-mix(in oklab, var(--plan-f) 22%, var(--paper));
      stroke-width: 2px;
    }
    .gone {
      display: none;
    }
    p {
      margin: 0;
      width: 120px;
      font: 17px/20px var(--sans);
    }
    td {
      border-bottom: 2px solid var(--ink);
    }
  `;
  @property() name = 'Žďár pear';

  protected override render() {
    return html`<section>
      <h2>Not of the picture</h2>
      <div class="picture">
        <b class="name">${this.name}</b>
        <svg width="100" height="40" viewBox="0 0 100 40">
          <defs>
            <pattern id="dots" width="4" height="4" patternUnits="userSpaceOnUse"><circle cx="2" cy="2" r="1"></circle></pattern>
          </defs>
          <rect width="30" height="30" fill="url(#dots)"></rect>
          <circle class="gone" cx="5" cy="5" r="4"></circle>
          <line x1="0" x2="100" y1="20" y2="20" data-plan="x" class="hair"></line>
        </svg>
        <p>These words are broken into several lines of the page.</p>
        <table>
          <tr>
            <td class="resting">cell</td>
          </tr>
        </table>
        <span class="visually-hidden" style="position:absolute;clip-path:inset(50%)">for ears only</span>
        <button>press</button>
      </div>
    </section>`;
  }
}

const source = { title: 'Pears & quinces', word: 'red', engine: '1', futures: 4000, date: '2026-11-25' };

async function mounted(): Promise<TestPicture> {
  const element = new TestPicture();
  document.body.append(element);
  await element.updateComplete;
  await document.fonts.ready;
  return element;
}
const saved = async () => {
  const host = await mounted();
  const file = await pictureOf({ host, title: 'A <finding> & more', summary: 'In a sentence.', futures: null }, source);
  return { file, host, parsed: new DOMParser().parseFromString(file.svg, 'image/svg+xml') };
};

afterEach(() => {
  document.body.replaceChildren();
  document.documentElement.removeAttribute('data-theme');
});

describe('a picture as a file', () => {
  it('is XML, with title, sentence and source line, and leaves nothing on the page', async () => {
    const { parsed, host } = await saved();
    expect(parsed.querySelector('parsererror')).toBeNull();
    expect(parsed.querySelector('title')?.textContent).toBe('A <finding> & more');
    const words = [...parsed.querySelectorAll('text')].map(({ textContent }) => textContent);
    expect(words).toContain('In a sentence.');
    expect(words.join(' ')).toContain('Pears & quinces. Orchard Odds, engine 1, shuffle word “red”, 4,000 futures a plan, 25\u00a0November\u00a02026.');
    expect([...document.body.children]).toEqual([host]);
  });

  it('holds words line by line where they stood, and nothing that is not seen', async () => {
    const { parsed } = await saved();
    const texts = [...parsed.querySelectorAll('text')];
    const lines = texts.filter(({ textContent }) => /These|words|broken|several|page/.test(textContent));
    expect(lines.length).toBeGreaterThan(2);
    expect(lines.map(({ textContent }) => textContent).join(' ')).toBe('These words are broken into several lines of the page.');
    const tops = lines.map((line) => Number(line.getAttribute('y')));
    for (const [at, y] of tops.entries()) if (at > 0) expect(y - (tops[at - 1] ?? 0)).toBeCloseTo(20, 0);
    const all = texts.map(({ textContent }) => textContent).join(' ');
    for (const none of ['for ears only', 'press', 'Not of the picture']) expect(all).not.toContain(none);
    expect(parsed.querySelectorAll('circle')).toHaveLength(1);
  });

  it('is in light colours on white from a dark page, in words that any program knows', async () => {
    document.documentElement.dataset['theme'] = 'dark';
    const { parsed, file } = await saved();
    expect(LIGHT.get('--plan-a')).toBe('#234ea1');
    expect(parsed.querySelector('text[font-style=italic]')?.getAttribute('fill')).toBe('#234ea1');
    expect(parsed.querySelector('circle')?.getAttribute('fill')).toBe('#2f4710');
    // 22 % of the teal in white: between the two, channel by channel.
    const mixed =
      /^#(..)(..)(..)$/
        .exec(parsed.querySelector('line')?.getAttribute('stroke') ?? '')
        ?.slice(1)
        .map((part) => parseInt(part, 16)) ?? [];
    for (const [at, channel] of [0x1b, 0x7a, 0x95].entries()) {
      expect(mixed[at]).toBeGreaterThan(channel);
      expect(mixed[at]).toBeLessThan(255);
    }
    expect(file.svg).not.toMatch(/var\(|oklab|color\(|light-dark|class=|data-plan|<!--/);
    expect(parsed.querySelector('g[opacity]')?.getAttribute('opacity')).toBe('0.5');
  });

  it('gives the patterns of each drawing names of their own', async () => {
    const { parsed } = await saved();
    const id = parsed.querySelector('pattern')?.id ?? '';
    expect(id).toMatch(/^p\d+-dots$/);
    expect(parsed.querySelector('svg rect[fill^="url"]')?.getAttribute('fill')).toBe(`url(#${id})`);
  });

  it('brings along the fonts it uses, with further letters and leaning ones where there are some', async () => {
    const { parsed } = await saved();
    const rules = parsed.querySelector('style')?.textContent ?? '';
    const faces = [...rules.matchAll(/font-family:'([^']+)';font-style:(\w+).*?url\(data:font\/woff2;base64,[\w+/=]+\).*?unicode-range:U\+(\w+)/g)].map(
      (found) => found.slice(1).join(' '),
    );
    expect(faces).toContain('Brygada 1918 Variable italic 0000');
    expect(faces).toContain('Source Sans 3 Variable normal 0000');
    expect(faces).toContain('Source Sans 3 Variable normal 0100');
    expect(faces).not.toContain('Source Sans 3 Variable italic 0000');
  });

  it('is painted at 300 dots an inch, and says so', async () => {
    const { file } = await saved();
    const bytes = new DataView(await (await pictureBlob(file)).arrayBuffer());
    expect([bytes.getUint32(16), bytes.getUint32(20)]).toEqual([file.widthMm, file.heightMm].map((mm) => Math.round((mm / 25.4) * 300)));
    expect(file.widthMm).toBeLessThanOrEqual(170);
    // W3C, Portable Network Graphics, 11.3.4.3: after IHDR, dots a metre.
    expect(bytes.getUint32(37)).toBe(0x70485973);
    expect(bytes.getUint32(41)).toBe(11_811);
    const image = await createImageBitmap(new Blob([bytes.buffer], { type: 'image/png' }));
    expect(image.width).toBe(bytes.getUint32(16));
  });
});

describe('what stands over a picture', () => {
  it('is found outwards through shadow roots, with the heading right above it', async () => {
    const host = await mounted();
    const outer = document.createElement('div');
    document.body.append(outer);
    const root = outer.attachShadow({ mode: 'open' });
    root.innerHTML =
      '<section><h2>The finding</h2><div class="notes"><h3>Beside it</h3></div><h3 class="inner">The map</h3><div id="at"></div><h3>After</h3></section>';
    const inner = root.querySelector('#at');
    if (!inner) throw new Error('There is no place.');
    expect(headingsOf(inner)).toEqual({ title: 'The finding', part: 'The map', summary: '' });
    inner.attachShadow({ mode: 'open' }).innerHTML = '<p id="summary">In  short</p><button></button>';
    const button = inner.shadowRoot?.querySelector('button');
    expect(button && headingsOf(button)).toEqual({ title: 'The finding', part: 'The map', summary: 'In short' });
    expect(headingsOf(host)).toEqual({ title: '', part: '', summary: '' });
  });

  it('gives a name of a file that is not too long', () => {
    expect(fileNameOf('Graft the weak ones: every seedling would lose 4 in 100, and the rest of it too', 'picture')).toBe(
      'graft-the-weak-ones-every-seedling-would-lose-4-in-100-and',
    );
    expect(fileNameOf('…', 'picture')).toBe('picture');
  });
});
