import { mount } from 'svelte';
import Frame from './frame/Frame.svelte';
import { start } from './state.svelte';
import './style.css';

const leaf = document.getElementById('leaf');
if (leaf) mount(Frame, { target: leaf });
void start();
