// How a packet leaves this device: by its own way of sharing files, else as a saved file.
import { say } from '../../state.svelte';
import { filesHaveAddresses, NoAnswer, packetAddress, savePacketFile } from '../../wire';

/** `kept`: somebody closed the sharing again; `saved in words`: the window said itself where. */
export type HandedOver = 'shared' | 'saved' | 'saved in words' | 'kept' | 'gone';

/** Hands the file of a packet to the device, to be called within the tap that asks for it. */
export async function handOver(packet: string, name: string, to: string): Promise<HandedOver> {
  if (!filesHaveAddresses) return keep(packet);
  const file = await read(packet, name);
  if (!file) return 'gone';
  const shared = { files: [file], title: to };
  if (!navigator.canShare?.(shared)) {
    save(packetAddress(packet), name);
    return 'saved';
  }
  try {
    await navigator.share(shared);
    return 'shared';
  } catch {
    return 'kept';
  }
}

async function read(packet: string, name: string): Promise<File | null> {
  try {
    const answer = await fetch(packetAddress(packet));
    if (!answer.ok) return null;
    return new File([await answer.blob()], name, { type: 'application/zip' });
  } catch {
    return null;
  }
}

function save(address: string, name: string): void {
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
}

async function keep(packet: string): Promise<HandedOver> {
  try {
    say((await savePacketFile(packet, null)).en);
    return 'saved in words';
  } catch (error) {
    if (!(error instanceof NoAnswer)) throw error;
    return 'gone';
  }
}
