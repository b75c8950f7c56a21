import { longDate } from '../../text/handout.ts';
import { saving, sourceLine } from '../../text/exports.ts';
import type { PictureSource, SavePicture } from '../charts/save-picture.ts';
import { fileNameOf } from '../charts/table-file.ts';
import { saveAsFile } from '../files.ts';
import { composed, pictureBlob, written, type PictureFile } from '../pictures-out.ts';
import { facesFor } from './faces.ts';
import { redrawn } from './redraw.ts';
import { trace } from './trace.ts';

const breathe = () => new Promise((resolve) => setTimeout(resolve));

/** A picture of the page as a file that stands alone. */
export async function pictureOf(
  { host, title, summary, futures }: Pick<SavePicture, 'host' | 'title' | 'summary' | 'futures'>,
  source: PictureSource,
): Promise<PictureFile> {
  const traced = await redrawn(host, trace);
  await breathe();
  const line = sourceLine(source.title, source.word, source.engine, futures ?? source.futures, longDate(source.date));
  const around = composed({ ...traced, height: traced.bottom - traced.top }, { title, summary, source: line });
  await breathe();
  return written(around, await facesFor(around.whole));
}

/** Makes a picture and hands it to the browser. */
export async function savePicture(asked: SavePicture, source: PictureSource): Promise<void> {
  const { kind, said } = asked;
  said(saving.making);
  try {
    const picture = await pictureOf(asked, source);
    const name = `${fileNameOf(asked.name, 'picture')}.${kind}`;
    if (kind === 'svg') saveAsFile(name, picture.svg, 'image/svg+xml');
    else saveAsFile(name, await pictureBlob(picture), 'image/png');
    said(saving.saved(name));
  } catch {
    said(saving.failed);
  }
}
