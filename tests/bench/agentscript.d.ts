/** The part of agentscript 0.10 that the bench uses; the library brings no types. */
declare module 'agentscript/dist/agentscript2d.js' {
  export class AgentArray<T> {
    readonly length: number;
    readonly [place: number]: T;
    push(agent: T): number;
    ask(each: (agent: T) => void): void;
    filter(keep: (agent: T) => boolean): AgentArray<T>;
  }
  export interface Patch {
    readonly id: number;
    /** Eight, from the upper left round to the left; fewer on the edge. */
    readonly neighbors: AgentArray<Patch>;
    patchAt(dx: number, dy: number): Patch | undefined;
    isOnEdge(): boolean;
    /** Ours. */
    variety: number;
    isFront: boolean;
  }
  export type World = object;
  export const World: new (
    options: Record<'minX' | 'maxX' | 'minY' | 'maxY' | 'minZ' | 'maxZ', number>,
  ) => World;
  export class Model {
    constructor(world: World);
    readonly patches: AgentArray<Patch> & { setDefault(name: string, value: unknown): void };
    readonly ticks: number;
    setup(): void;
    step(): void;
  }
}
