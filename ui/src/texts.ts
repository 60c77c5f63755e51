// Texts with arguments that the replies do not carry yet, in both languages.
import { told as toldInSpanish } from './words/es_told';

const spanish = (): boolean => document.documentElement.lang === 'es';

/** Returns a text of a reply in the language of the page. */
export const told = (text: string): string => (spanish() ? toldInSpanish(text) : text);

/** Returns `Leg 4` for `leg 4`. */
export const nameOf = (thing: string): string => {
  const name = told(thing);
  return name.charAt(0).toUpperCase() + name.slice(1);
};

/** Returns the text of the page's language. */
const either = (en: string, es: string): string => (spanish() ? es : en);

export const texts = {
  undone: (act: string) => either(`Taken back: ${act}.`, `Deshecho: ${told(act)}.`),
  redone: (act: string) => either(`Done again: ${act}.`, `Hecho otra vez: ${told(act)}.`),
  struck: (thing: string) =>
    either(
      `Struck: ${thing}. Undo takes the strike back.`,
      `Tachado: ${told(thing)}. Deshacer lo devuelve.`,
    ),
  settled: (title: string) =>
    either(`${title} settled at the desk.`, `${told(title)} resuelto en la oficina.`),
  joined: (company: string, address: string) =>
    either(
      `Joined to the hub of “${company}” at ${address}.`,
      `Unido a la central de “${company}” en ${address}.`,
    ),
  called: (name: string) =>
    either(
      `The other devices show this one as ${name}.`,
      `Los otros aparatos muestran este como ${told(name)}.`,
    ),
  endOfLeg: (leg: number) => either(`At the end of leg ${leg}`, `Al final del lado ${leg}`),
  madeOf: (things: string[]) =>
    either(`Worked out from ${things.join(', ')}.`, `Sale de ${things.map(told).join(', ')}.`),
  turned: (faces: string[]) =>
    either(
      `Turned this way: ${faces.join(', ')}.`,
      `Hacia este lado: ${faces.map(told).join(', ')}.`,
    ),
  total: (range: string) => `Total ${range}`,
  changePhotos: (count: number) =>
    either(
      count === 1 ? '1 photo of it.' : `${count} photos of it.`,
      count === 1 ? '1 foto.' : `${count} fotos.`,
    ),
  changeRecorded: (title: string) =>
    either(`${title} is recorded.`, `${told(title)} está anotado.`),
  packetMade: (title: string) =>
    either(
      `${title} is made and kept here. Nothing was sent.`,
      `${told(title)}: hecha y guardada aquí. No se mandó nada.`,
    ),
  samePacket: (title: string) =>
    either(
      `Nothing was recorded since: it is still ${title}.`,
      `No se anotó nada desde entonces: sigue siendo ${told(title)}.`,
    ),
  toSend: (title: string, open: string | null) =>
    open
      ? either(
          `${title}: ${open}, named in it.`,
          `${told(title)}: ${told(open)}, nombrado en ella.`,
        )
      : `${told(title)}.`,
  sameAs: (face: string) => either(`Same as ${face}`, `Igual que ${told(face)}`),
  photoKept: (thing: string) => either(`${nameOf(thing)} is kept.`, `${nameOf(thing)}: guardada.`),
  photoHereAlready: () =>
    either(
      'This photo is here already. It is recorded once.',
      'Esta foto ya está aquí. Se anota una vez.',
    ),
};
