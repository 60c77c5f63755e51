import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vite';

// Every asset is a file of its own: the page's security policy allows no data: address.
export default defineConfig({
  plugins: [svelte()],
  build: { target: 'es2022', assetsInlineLimit: 0, modulePreload: { polyfill: false } },
});
