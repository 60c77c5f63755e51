// The only way out of the page: requests, photos and files to the field book on this device.
import { invoke, isTauri } from '@tauri-apps/api/core';
import type { PhotoDistance, PhotoPlace, Reply, Request, Sentence } from './generated';

/** The field book on this device did not answer. It may or may not have recorded the request. */
export class NoAnswer extends Error {}

/** Sends one request and returns its reply; a refusal is a reply. Throws `NoAnswer`. */
export async function command(request: Request): Promise<Reply> {
  if (isTauri()) return invokeCommand<Reply>('command', { request });
  return post('/command', JSON.stringify(request), 'application/json');
}

/** What is sent with a photo; `of` is the id of the thing on it: `leg 4`. */
export type AboutPhoto = {
  job: string;
  of: string | null;
  from: 'camera' | 'file';
  heading: number | null;
  /** How the phone was held: `beta,gamma,screen`, degrees. */
  tilt?: string | null;
  place?: PhotoPlace;
  distance?: PhotoDistance;
  /** The bytes are a sound recording. */
  said_aloud?: boolean;
};

/** Sends the unchanged bytes of one photo. Throws `NoAnswer`. */
export async function photo(about: AboutPhoto, file: Blob): Promise<Reply> {
  const query = photoQuery(about);
  if (isTauri()) {
    const bytes = new Uint8Array(await file.arrayBuffer());
    return invokeCommand<Reply>('photo', bytes, { 'eavebook-about': query.toString() });
  }
  return post(`/photo?${query}`, file, file.type || 'application/octet-stream');
}

/** Returns what is known of a photo as a query; what is unknown is left out. */
export function photoQuery(about: AboutPhoto): URLSearchParams {
  const query = new URLSearchParams({ job: about.job, from: about.from });
  if (about.of) query.set('of', about.of);
  if (about.heading !== null) query.set('heading', about.heading.toFixed(1));
  if (about.tilt) query.set('tilt', about.tilt);
  if (about.place) query.set('place', about.place);
  if (about.distance) query.set('distance', about.distance);
  if (about.said_aloud) query.set('said_aloud', 'true');
  return query;
}

/** What is sent with a piece of a file: its first byte in the file, and the bytes of the whole. */
export type AboutPiece = { file: string; at: number; whole: number };

/** Sends one piece of a file that somebody adds by hand. Throws `NoAnswer`. */
export async function addFile({ file, at, whole }: AboutPiece, piece: Blob): Promise<Reply> {
  const query = new URLSearchParams({ file, at: String(at), whole: String(whole) });
  if (isTauri()) {
    const bytes = new Uint8Array(await piece.arrayBuffer());
    return invokeCommand<Reply>('carry_in', bytes, { 'eavebook-about': query.toString() });
  }
  return post(`/carried?${query}`, piece, 'application/octet-stream');
}

/** Makes a copy of all jobs, to be downloaded from `copyAddress`. Throws `NoAnswer`. */
export function makeCopy(): Promise<Reply> {
  return post('/copy', '', 'application/octet-stream');
}

/** Returns the address from which a copy of all jobs is downloaded, once. */
export function copyAddress(file: string): string {
  return `/copy/${file}`;
}

/** Saves a copy of all jobs in the system's folder for downloads and names it. Throws `NoAnswer`. */
export function saveCopy(): Promise<Sentence> {
  return invokeCommand<Sentence>('save_copy', {});
}

/** Reads the link of a hub off a photo of its QR code. Throws `NoAnswer`. */
export async function readCode(file: Blob): Promise<Reply> {
  if (isTauri()) {
    return invokeCommand<Reply>('read_square', new Uint8Array(await file.arrayBuffer()));
  }
  return post('/square', file, file.type || 'application/octet-stream');
}

/** Returns the address of a kept photo. Throws `NoAnswer`. */
export async function photoAddress(sha256: string): Promise<string> {
  if (!isTauri()) return `/photo/${sha256}`;
  return URL.createObjectURL(
    new Blob([await invokeCommand<ArrayBuffer>('kept_photo', { sha256 })]),
  );
}

/** Files are opened and saved by an address, as in a browser. The desktop window saves them itself. */
export const filesHaveAddresses = !isTauri();

/** Returns the address of a packet, or of one paper in it. */
export function packetAddress(packet: string, path?: string): string {
  return path ? `/packet/${packet}/${path}` : `/packet/${packet}`;
}

/** Saves a packet, or a paper in it, in the system's folder for downloads. Throws `NoAnswer`. */
export function savePacketFile(packet: string, path: string | null): Promise<Sentence> {
  return invokeCommand<Sentence>('save_packet_file', { packet, path });
}

async function invokeCommand<T>(
  name: string,
  body: Record<string, unknown> | Uint8Array,
  headers: Record<string, string> = {},
): Promise<T> {
  try {
    return await invoke<T>(name, body, { headers });
  } catch (cause) {
    throw new NoAnswer(String(cause), { cause });
  }
}

async function post(path: string, body: BodyInit, type: string): Promise<Reply> {
  let response: Response;
  try {
    response = await fetch(path, { method: 'POST', headers: { 'content-type': type }, body });
  } catch (cause) {
    throw new NoAnswer('the field book does not answer', { cause });
  }
  if (!response.ok) throw new NoAnswer(`the field book answered ${response.status}`);
  return (await response.json()) as Reply;
}
