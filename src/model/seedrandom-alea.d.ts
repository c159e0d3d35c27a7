declare module 'seedrandom/lib/alea' {
  import type { PRNG } from 'seedrandom';
  export default function alea(seed: string): PRNG;
}
