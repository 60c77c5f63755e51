import { mount } from 'svelte';
import Frame from './frame/Frame.svelte';
import { sendRequest, book, resume } from './state.svelte';
import './style.css';
import { speakLanguage } from './words';

/** Words first, then the leaf, then where the person was. */
async function begin(): Promise<void> {
  const answered = await sendRequest({ ask: 'today' });
  if (book.settings) await speakLanguage(book.settings.language);
  const leaf = document.getElementById('leaf');
  if (!leaf) return;
  // The line that stood there from the first moment gives way to the leaf.
  leaf.replaceChildren();
  mount(Frame, { target: leaf });
  if (answered) await resume();
}

void begin();
