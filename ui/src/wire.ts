// The only door out: every request leaves by `command`, every photo by `photo`, every file by `carryIn`.
import { invoke, isTauri } from '@tauri-apps/api/core';
import type { PhotoDistance, PhotoPlace, Reply, Request, Sentence } from './generated';

/** The field book on this device did not answer. Nothing is known to be changed. */
export class NoAnswer extends Error {}

/** Sends one request and gives its reply; a refusal is a reply. Throws `NoAnswer`. */
export async function command(request: Request): Promise<Reply> {
  if (isTauri()) return invokeOr<Reply>('command', { request });
  return post('/command', JSON.stringify(request), 'application/json');
}

/** What goes with a photo; `of`: the name of the thing it shows, `leg 4`. */
export type AboutPhoto = {
  job: string;
  of: string | null;
  from: 'camera' | 'file';
  heading: number | null;
  /** How the phone was held: `beta,gamma,screen`. */
  tilt?: string | null;
  place?: PhotoPlace;
  distance?: PhotoDistance;
  /** The bytes are no picture but what somebody said. */
  said_aloud?: boolean;
};

/** Sends the bytes of one photo, as they are. Throws `NoAnswer`. */
export async function photo(about: AboutPhoto, file: Blob): Promise<Reply> {
  const query = new URLSearchParams({ job: about.job, from: about.from });
  if (about.of) query.set('of', about.of);
  if (about.heading !== null) query.set('heading', about.heading.toFixed(1));
  if (about.tilt) query.set('tilt', about.tilt);
  if (about.place) query.set('place', about.place);
  if (about.distance) query.set('distance', about.distance);
  if (about.said_aloud) query.set('said_aloud', 'true');
  if (isTauri()) {
    const bytes = new Uint8Array(await file.arrayBuffer());
    return invokeOr<Reply>('photo', bytes, { 'eavebook-about': query.toString() });
  }
  return post(`/photo?${query}`, file, file.type || 'application/octet-stream');
}

/** What goes with a piece of a file that is carried in: bytes before it, bytes of the whole. */
export type AboutPiece = { file: string; at: number; whole: number };

/** Sends one piece of a file that is carried in by hand. Throws `NoAnswer`. */
export async function carryIn({ file, at, whole }: AboutPiece, piece: Blob): Promise<Reply> {
  const query = new URLSearchParams({ file, at: String(at), whole: String(whole) });
  if (isTauri()) {
    const bytes = new Uint8Array(await piece.arrayBuffer());
    return invokeOr<Reply>('carry_in', bytes, { 'eavebook-about': query.toString() });
  }
  return post(`/carried?${query}`, piece, 'application/octet-stream');
}

/** Has a copy of the whole book made, to be fetched from its address. Throws `NoAnswer`. */
export function makeCopy(): Promise<Reply> {
  return post('/copy', '', 'application/octet-stream');
}

/** Where a copy of the whole book is fetched from, once. */
export function copyAddress(file: string): string {
  return `/copy/${file}`;
}

/** Saves a copy of the whole book where the system keeps what is saved: says where. Throws `NoAnswer`. */
export function saveCopy(): Promise<Sentence> {
  return invokeOr<Sentence>('save_copy', {});
}

/** Has the link of a hub read off a photo of its square. Throws `NoAnswer`. */
export async function readSquare(file: Blob): Promise<Reply> {
  if (isTauri()) {
    return invokeOr<Reply>('read_square', new Uint8Array(await file.arrayBuffer()));
  }
  return post('/square', file, file.type || 'application/octet-stream');
}

/** Where a kept photo can be shown from. Throws `NoAnswer`. */
export async function photoAddress(sha256: string): Promise<string> {
  if (!isTauri()) return `/photo/${sha256}`;
  return URL.createObjectURL(new Blob([await invokeOr<ArrayBuffer>('kept_photo', { sha256 })]));
}

/** Whether files open and are saved by an address, as in a browser. The window saves them itself. */
export const filesHaveAddresses = !isTauri();

/** Where a packet is saved from, or a paper in it is looked at. */
export function packetAddress(packet: string, path?: string): string {
  return path ? `/packet/${packet}/${path}` : `/packet/${packet}`;
}

/** Saves a packet, or a paper in it, where the system keeps what is saved: says where. Throws `NoAnswer`. */
export function savePacketFile(packet: string, path: string | null): Promise<Sentence> {
  return invokeOr<Sentence>('save_packet_file', { packet, path });
}

async function invokeOr<T>(
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
  let answer: Response;
  try {
    answer = await fetch(path, { method: 'POST', headers: { 'content-type': type }, body });
  } catch (cause) {
    throw new NoAnswer('the field book does not answer', { cause });
  }
  if (!answer.ok) throw new NoAnswer(`the field book answered ${answer.status}`);
  return (await answer.json()) as Reply;
}
