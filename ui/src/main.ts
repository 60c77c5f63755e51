import { mount } from 'svelte';
import Frame from './frame/Frame.svelte';
import { start } from './state.svelte';
import './style.css';

const leaf = document.getElementById('leaf');
if (leaf) {
  // The line that stood there from the first moment gives way to the leaf.
  leaf.replaceChildren();
  mount(Frame, { target: leaf });
}
void start();
