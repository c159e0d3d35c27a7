import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig, type Plugin } from 'vite';

const POLICY = [
  "default-src 'self'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' blob: data:",
  "worker-src 'self' blob:",
  "connect-src 'self'",
  "font-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/** In the build only: the development server puts styles inline, which the policy would strip. */
const policy: Plugin = {
  name: 'content-security-policy',
  apply: 'build',
  transformIndexHtml: () => [
    {
      tag: 'meta',
      attrs: { 'http-equiv': 'Content-Security-Policy', content: POLICY },
      injectTo: 'head-prepend',
    },
  ],
};

export default defineConfig({
  base: './', // so that the built page works under any path of any plain static host
  plugins: [svelte(), policy],
  worker: { format: 'es' },
  build: {
    target: 'es2022',
    assetsInlineLimit: 0, // a font or script inlined as data: would break the policy
    reportCompressedSize: false, // .ci/size.mjs weighs what the first view loads
    chunkSizeWarningLimit: 1000,
  },
});
