/** The grown tile on a canvas. Alone here is Pixi: one shader over the whole canvas, data textures made once per grid, drawn only when asked. */
import 'pixi.js/unsafe-eval';
import type { BufferImageSource } from 'pixi.js';
import { DOMAdapter, Geometry, Shader, State, UniformGroup, WebGLRenderer, WebWorkerAdapter } from 'pixi.js';
import type { Frame, PolypSites } from '../model/frame';
import type { Tile, Variety } from '../plan/plan';
import { GRAIN_SIZE, makeGrain } from '../skin/grain';
import { paletteOf } from '../skin/palette';
import { lightFrom } from '../skin/relief';
import { dataTexture, Fields } from './fields';
import { RELIEF_FRAGMENT, RELIEF_VERTEX } from './relief.frag';
import type { Camera, Grown } from './scene';

DOMAdapter.set(WebWorkerAdapter);

function grainTexture(bytes: Uint8Array<ArrayBuffer>, size: number): BufferImageSource {
  const texture = dataTexture(bytes, size, size, true);
  texture.style.addressMode = 'repeat';
  return texture;
}

function latticeTexture({ columns, rows, offset }: PolypSites): BufferImageSource {
  const bytes = new Uint8Array(columns * rows * 4);
  for (let i = 0; i < columns * rows; i++) {
    bytes[i * 4] = offset[i * 2];
    bytes[i * 4 + 1] = offset[i * 2 + 1];
  }
  return dataTexture(bytes, columns, rows, false);
}

export class Picture {
  readonly #renderer: WebGLRenderer;
  readonly #blending = State.for2d();
  readonly #uniforms: UniformGroup;
  readonly #shader: Shader;
  readonly #geometry: Geometry;
  #grain = grainTexture(new Uint8Array([127, 127, 127, 127]), 1);
  /** A bare tile, flat and in full light, until the first frame comes: the shader is compiled meanwhile. */
  readonly #blank = dataTexture(new Uint8Array([255, 0, 0, 0]), 1, 1, true);
  readonly #noSites = dataTexture(new Uint8Array(4), 1, 1, false);
  readonly #flat = dataTexture(new Uint8Array([128, 128, 255, 127]), 1, 1, true);
  /** At all cells, and at fewer for while things move. */
  #fine: Fields | null = null;
  #coarse: Fields | null = null;
  #lattice: BufferImageSource | null = null;
  #sites: PolypSites | null = null;

  /** Rejects where there is no WebGL. */
  static async on(canvas: OffscreenCanvas): Promise<Picture> {
    const renderer = new WebGLRenderer();
    await renderer.init({
      canvas,
      width: 16,
      height: 16,
      backgroundAlpha: 0,
      antialias: false,
      preferWebGLVersion: 2,
      skipExtensionImports: true,
    });
    return new Picture(renderer);
  }

  private constructor(renderer: WebGLRenderer) {
    this.#renderer = renderer;
    const blank = this.#blank;
    this.#uniforms = new UniformGroup({
      uCentre: { value: new Float32Array(2), type: 'vec2<f32>' },
      uReach: { value: new Float32Array([1, 1]), type: 'vec2<f32>' },
      uGridMm: { value: new Float32Array([1, 1]), type: 'vec2<f32>' },
      uTile: { value: new Float32Array(3), type: 'vec3<f32>' },
      uLattice: { value: new Float32Array([0, 1, 0]), type: 'vec3<f32>' },
      uLight: { value: new Float32Array([-0.7, -0.7, 0.85]), type: 'vec3<f32>' },
      uPxMm: { value: 0.2, type: 'f32' },
      uMany: { value: 0, type: 'f32' },
      uWarpMm: { value: 0, type: 'f32' },
      uTissue: { value: new Float32Array(24), type: 'vec3<f32>', size: 8 },
      uPolyp: { value: new Float32Array(24), type: 'vec3<f32>', size: 8 },
    });
    this.#shader = Shader.from({
      gl: { vertex: RELIEF_VERTEX, fragment: RELIEF_FRAGMENT },
      resources: {
        look: this.#uniforms,
        uFirst: blank,
        uSecond: blank,
        uSurface: blank,
        uRelief: this.#flat,
        uSites: this.#noSites,
        uGrain: this.#grain,
      },
    });
    this.#geometry = new Geometry({
      attributes: { aPosition: [-1, -1, 1, -1, 1, 1, -1, 1] },
      indexBuffer: [0, 1, 2, 0, 2, 3],
    });
    this.#compile();
  }

  /** The frame to be drawn from now on, read at fewer cells if `isCoarse`. Null leaves what was there. */
  show(
    { frame, sites }: Grown,
    tile: Tile,
    varieties: readonly Variety[],
    lightDeg: number,
    isCoarse: boolean,
  ): void {
    if (frame !== null) {
      const fields = this.#fieldsFor(frame, tile, isCoarse);
      fields.fill(frame, lightDeg);
      this.#bind(fields);
    }
    const light = lightFrom(lightDeg);
    this.#uniforms.uniforms.uLight = new Float32Array([light.x, light.y, light.rise]);
    if (sites !== this.#sites) this.#showSites(sites);
    const u = this.#uniforms.uniforms;
    const palette = paletteOf(varieties);
    Object.assign(u, {
      uTissue: palette.tissue,
      uPolyp: palette.polyp,
      uMany: varieties.length > 4 ? 1 : 0,
    });
    u.uTile = new Float32Array([
      tile.sizeMm / 2,
      tile.shape === 'disc' ? 1 : 0,
      Math.min(2, tile.sizeMm / 20),
    ]);
    this.#uniforms.update();
  }

  /** Size in CSS pixels and device pixels to each. */
  resize(widthPx: number, heightPx: number, pixelRatio: number): void {
    this.#renderer.resize(Math.max(1, widthPx), Math.max(1, heightPx), pixelRatio);
  }

  look(camera: Camera): void {
    const u = this.#uniforms.uniforms;
    const { width, height, resolution } = this.#renderer;
    u.uCentre = new Float32Array([camera.xMm, camera.yMm]);
    // Pixi's width and height are CSS pixels, whatever the resolution
    u.uReach = new Float32Array([width / 2 / camera.pxPerMm, height / 2 / camera.pxPerMm]);
    u.uPxMm = 1 / (camera.pxPerMm * resolution);
    this.#uniforms.update();
  }

  /** The finest grain of tissue and tile; made only once something is on screen, for it takes as long as a drawing. */
  addGrain(): void {
    const before = this.#grain;
    this.#grain = grainTexture(makeGrain(), GRAIN_SIZE);
    this.#shader.resources.uGrain = this.#grain;
    before.destroy();
  }

  draw(): void {
    const { encoder, renderTarget, view } = this.#renderer;
    renderTarget.bind({ target: view.renderTarget, clear: true });
    encoder.draw({ geometry: this.#geometry, shader: this.#shader, state: this.#blending });
  }

  destroy(): void {
    this.#shader.destroy();
    this.#geometry.destroy(true);
    for (const texture of [this.#grain, this.#lattice, this.#blank, this.#noSites, this.#flat])
      texture?.destroy();
    this.#fine?.destroy();
    this.#coarse?.destroy();
    this.#renderer.destroy();
  }

  /**
   * Draws once on the canvas, still small, and wipes it before anybody sees it, without waiting: graphics by software
   * build the shader's program only when it is first used (0.3 s), once for each kind of target, and do so meanwhile.
   */
  #compile(): void {
    const { gl, renderTarget, view } = this.#renderer;
    this.draw();
    // a flush alone may wait until something else is drawn on; a fence ends the drawing
    gl.deleteSync(gl.fenceSync(gl.SYNC_GPU_COMMANDS_COMPLETE, 0));
    gl.flush();
    renderTarget.bind({ target: view.renderTarget, clear: true });
  }

  #fieldsFor(frame: Frame, tile: Tile, isCoarse: boolean): Fields {
    const before = isCoarse ? this.#coarse : this.#fine;
    if (before?.fits(frame, tile)) return before;
    const fields = new Fields(frame, tile, isCoarse);
    this.#bind(fields);
    // Only now: a texture must not go while the shader still holds it.
    before?.destroy();
    if (isCoarse) this.#coarse = fields;
    else this.#fine = fields;
    return fields;
  }

  #bind(fields: Fields): void {
    const { resources } = this.#shader;
    if (resources.uFirst === fields.first) return;
    Object.assign(resources, {
      uFirst: fields.first,
      uSecond: fields.second,
      uSurface: fields.surface,
      uRelief: fields.relief,
    });
    const u = this.#uniforms.uniforms;
    u.uGridMm = new Float32Array([fields.widthMm, fields.heightMm]);
    u.uWarpMm = Math.min(0.14, fields.cellMm * 0.24);
  }

  #showSites(sites: PolypSites | null): void {
    this.#sites = sites;
    const before = this.#lattice;
    this.#lattice = sites === null ? null : latticeTexture(sites);
    this.#shader.resources.uSites = this.#lattice ?? this.#noSites;
    before?.destroy();
    this.#uniforms.uniforms.uLattice = new Float32Array(
      sites === null ? [0, 1, 0] : [sites.originMm, sites.spacingMm, 1],
    );
  }
}
