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

/** What the first script asks for, named in the page so that it comes at the same time. */
const preload: Plugin = {
  name: 'preload-start',
  apply: 'build',
  transformIndexHtml: {
    order: 'post',
    handler(html, { bundle }) {
      const start = Object.values(bundle ?? {}).find(
        (file) => file.type === 'chunk' && file.isDynamicEntry && file.name === 'start',
      );
      if (start?.type !== 'chunk') return [];
      const scripts = [start.fileName, ...start.imports].filter((file) => !html.includes(file));
      const scriptLinks = scripts.map((file) => ({
        tag: 'link',
        attrs: { rel: 'modulepreload', crossorigin: true, href: `./${file}` },
        injectTo: 'head' as const,
      }));
      const styles = [...(start.viteMetadata?.importedCss ?? [])].map((file) => ({
        tag: 'link',
        attrs: { rel: 'stylesheet', crossorigin: true, href: `./${file}` },
        injectTo: 'head' as const,
      }));
      return [...scriptLinks, ...styles];
    },
  },
};

export default defineConfig({
  base: './', // so that the built page works under any path of any plain static host
  plugins: [svelte(), policy, preload],
  worker: { format: 'es' },
  build: {
    target: 'es2022',
    assetsInlineLimit: 0, // a font or script inlined as data: would break the policy
    reportCompressedSize: false, // .ci/size.mjs weighs what the first view loads
    chunkSizeWarningLimit: 1000,
    rolldownOptions: { checks: { bundlerTimings: false } }, // who opens the app for the first time reads only its address
  },
});
