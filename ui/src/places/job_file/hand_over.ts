// How a packet leaves this device: by the sharing of the device, or as a saved file.
import type { Sentence } from '../../generated';
import { filesHaveAddresses, NoAnswer, packetAddress, savePacketFile } from '../../wire';

/**
 * `kept`: somebody closed the sharing again. `gone`: the file is not on this device. An object: the
 * desktop window saved the file and names it.
 */
export type HandedOver = 'shared' | 'saved' | 'kept' | 'gone' | { saved: Sentence };

/** Hands the file of a packet to the device, within the tap that asks for it. */
export async function handOver(packet: string, name: string, to: string): Promise<HandedOver> {
  if (!filesHaveAddresses) return saveInWindow(packet);
  const file = await fetchFile(packet, name);
  if (!file) return 'gone';
  const shared = { files: [file], title: to };
  if (!navigator.canShare?.(shared)) {
    download(packetAddress(packet), name);
    return 'saved';
  }
  try {
    await navigator.share(shared);
    return 'shared';
  } catch {
    return 'kept';
  }
}

async function fetchFile(packet: string, name: string): Promise<File | null> {
  try {
    const response = await fetch(packetAddress(packet));
    if (!response.ok) return null;
    return new File([await response.blob()], name, { type: 'application/zip' });
  } catch {
    return null;
  }
}

function download(address: string, name: string): void {
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
}

async function saveInWindow(packet: string): Promise<HandedOver> {
  try {
    return { saved: await savePacketFile(packet, null) };
  } catch (error) {
    if (!(error instanceof NoAnswer)) throw error;
    return 'gone';
  }
}
