import { mount } from 'svelte';
import Frame from './frame/Frame.svelte';
import { chooseLanguage } from './language';
import { page, resume, sendRequest } from './state.svelte';
import './style.css';

// The language first, since components read their labels when they are created.
async function begin(): Promise<void> {
  const answered = await sendRequest({ ask: 'today' });
  if (page.settings) chooseLanguage(page.settings.language);
  const target = document.getElementById('page');
  if (!target) return;
  // Removes the name that the document shows while the page loads.
  target.replaceChildren();
  mount(Frame, { target });
  if (answered) await resume();
}

void begin();
