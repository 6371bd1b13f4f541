// Filings as a file: JSON with the photos inside, as docs/offline.md tells.
import { toDataUrl } from './shrink.js';

const FORMAT = 'big-tree-filings';

/** The text of a file that holds them. */
export async function written(filings) {
  const all = [];
  for (const filing of filings) {
    all.push({ id: filing.id, person: filing.person, name: filing.name ?? '', title: filing.title, address: filing.address,
      madeAt: new Date(filing.madeAt).toISOString(), state: filing.state, filedAt: filing.at ?? null, entries: filing.entries,
      photos: await Promise.all(filing.photos.filter((photo) => photo.blob).map(photoOf)) });
  }
  return JSON.stringify({ format: FORMAT, version: 1, savedAt: new Date().toISOString(), filings: all }, null, 1);
}

async function photoOf({ blob, key, name, shows, text, takenOn, credit }) {
  const data = await toDataUrl(blob);
  return { key, name, shows, text, takenOn, credit, mediaType: blob.type, base64: data.slice(data.indexOf(',') + 1) };
}

/** Has the browser save a file. */
export async function save(filings) {
  const address = URL.createObjectURL(new Blob([await written(filings)], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = `filings-${new Date().toISOString().slice(0, 10)}.json`;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/**
 * Takes in a file that this person saved.
 * @param unfinished what is said of a form that was not finished
 * @return how many filings it held; null where it is no such file of theirs
 */
export async function takeIn(file, person, unfinished) {
  let json;
  try {
    json = JSON.parse(await file.text());
  } catch {
    return null;
  }
  const filings = json?.format === FORMAT && Array.isArray(json.filings) ? json.filings : [];
  if (filings.length === 0 || filings.some((filing) => filing.person !== person || !filing.id || !Array.isArray(filing.entries))) {
    return null;
  }
  for (const filing of filings) {
    const draft = filing.state === 'draft';
    await self.outbox.keep({ person, id: filing.id, name: filing.name, title: filing.title, address: filing.address,
      madeAt: Date.parse(filing.madeAt), entries: filing.entries, at: filing.filedAt ?? undefined,
      state: draft ? 'refused' : filing.filedAt ? 'photos' : 'waits', refusal: draft ? { detail: unfinished } : undefined,
      photos: (filing.photos ?? []).map(blobOf) });
  }
  return filings.length;
}

function blobOf({ key, name, shows, text, takenOn, credit, mediaType, base64 }) {
  const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
  return { key, name, shows, text, takenOn, credit, blob: new Blob([bytes], { type: mediaType }) };
}
