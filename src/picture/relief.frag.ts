/**
 * The look of a grown tile, per pixel. Smooth fields come from src/skin at the frame's cells; polyps, papillae,
 * swell and mottling are drawn here at the screen's own fineness. Lengths are mm, slopes mm per mm, y runs down.
 * The version line must be the very first characters, else the shader is taken for WebGL 1.
 */
export const RELIEF_VERTEX = `#version 300 es
in vec2 aPosition;
out vec2 vMm;
uniform vec2 uCentre;
uniform vec2 uReach;
void main() {
  vMm = uCentre + vec2(aPosition.x, -aPosition.y) * uReach;
  gl_Position = vec4(aPosition, 0.0, 1.0);
}`;

export const RELIEF_FRAGMENT = `#version 300 es
precision highp float;
in vec2 vMm;
out vec4 oColour;
uniform sampler2D uFirst;
uniform sampler2D uSecond;
uniform sampler2D uSurface;
uniform sampler2D uRelief;
uniform sampler2D uGrain;
uniform sampler2D uSites;
uniform vec2 uGridMm;      // width and height of the grid of cells
uniform vec3 uTile;        // half its size, 1 for a disc, rounding of a square's corners
uniform vec3 uLattice;     // polyp lattice: corner, spacing, 1 if there is one
uniform vec3 uLight;       // towards the light, z its rise
uniform float uPxMm;       // mm that a pixel spans
uniform float uMany;       // 1 with more than four varieties
uniform float uWarpMm;     // wobble of borders at the scale of a polyp
uniform vec3 uTissue[8];
uniform vec3 uPolyp[8];

const vec3 BONE = vec3(0.87, 0.84, 0.77);
const vec3 ALGAE = vec3(0.47, 0.50, 0.33);
const vec3 STONE = vec3(0.232, 0.232, 0.248);

float slopeOf(float byte) {
  float v = (byte * 255.0 - 128.0) / 127.0;
  return v / max(0.02, 1.0 - abs(v));
}

/** Distance to the tile's edge, negative on the tile. */
float beyondTile(vec2 mm) {
  if (uTile.y > 0.5) return length(mm) - uTile.x;
  vec2 q = abs(mm) - (uTile.x - uTile.z);
  return length(max(q, 0.0)) + min(max(q.x, q.y), 0.0) - uTile.z;
}

void main() {
  vec2 mm = vMm;
  float beyond = beyondTile(mm);
  // The tile's own soft shade on what it lies on.
  float near = max(0.0, 1.0 - beyondTile(mm + uLight.xy * uTile.x * 0.02) / (uTile.x * 0.09));
  float shade = 0.2 * min(1.0, near * near);
  if (beyond > uPxMm) {
    oColour = vec4(0.0, 0.0, 0.0, shade);
    return;
  }
  vec4 fine = (texture(uGrain, mm / 21.0) - 0.5) * 6.0;
  vec4 broad = (texture(uGrain, vec2(mm.x * 0.8 + mm.y * 0.6, mm.y * 0.8 - mm.x * 0.6) / 171.0 + 0.37) - 0.5) * 6.0;
  vec2 at = (mm + fine.zw * uWarpMm) / uGridMm + 0.5;
  vec4 surface = texture(uSurface, at);
  vec4 relief = texture(uRelief, at);
  vec4 first = texture(uFirst, at);

  // Labels: the strongest share wins, softened over about a pixel.
  float soft = clamp(uPxMm * 1.6, 0.05, 0.8);
  float most = max(max(first.x, first.y), max(first.z, first.w));
  most = max(most, surface.g);
  vec4 second = vec4(0.0);
  if (uMany > 0.5) {
    second = texture(uSecond, at);
    most = max(most, max(max(second.x, second.y), max(second.z, second.w)));
  }
  float from = most - soft;
  first = max(first - from, 0.0);
  second = max(second - from, 0.0) * uMany;
  float bare = max(surface.g - from, 0.0);
  float sum = dot(first, vec4(1.0)) + dot(second, vec4(1.0));
  float live = sum / max(sum + bare, 1e-4);
  vec3 tissue = first.x * uTissue[0] + first.y * uTissue[1] + first.z * uTissue[2] + first.w * uTissue[3];
  vec3 hue = first.x * uPolyp[0] + first.y * uPolyp[1] + first.z * uPolyp[2] + first.w * uPolyp[3];
  if (uMany > 0.5) {
    tissue += second.x * uTissue[4] + second.y * uTissue[5] + second.z * uTissue[6] + second.w * uTissue[7];
    hue += second.x * uPolyp[4] + second.y * uPolyp[5] + second.z * uPolyp[6] + second.w * uPolyp[7];
  }
  tissue /= max(sum, 1e-4);
  hue /= max(sum, 1e-4);
  float cover = smoothstep(0.5 - soft * 0.5, 0.5 + soft * 0.5, 1.0 - surface.r);
  float pale = surface.b;
  float age = surface.a * 36.0;

  // Polyps: a raised ring round a small hollow at each site; four sites can reach a pixel.
  vec2 slope = vec2(0.0);
  float ring = 0.0;
  float mouth = 0.0;
  float disc = 0.0;
  float odd = 0.0;
  float shown = uLattice.z * clamp(0.55 / uPxMm / 3.0, 0.0, 1.0);
  if (cover > 0.0 && shown > 0.0) {
    vec2 p = (mm - uLattice.x) / uLattice.y;
    ivec2 box = ivec2(floor(p - 0.5));
    for (int k = 0; k < 4; k++) {
      ivec2 b = box + ivec2(k & 1, k >> 1);
      vec2 site = texelFetch(uSites, b, 0).xy;
      vec2 d = (p - vec2(b) - site) * uLattice.y;
      float chance = fract(dot(site, vec2(37.31, 91.73)));
      float r = 0.23 + 0.08 * chance;
      float u = dot(d, d) / (r * r);
      float fall = max(0.0, 1.0 - 0.125 * u); // near exp(-u), and cheaper
      fall *= fall;
      fall *= fall;
      fall *= fall;
      float rise = u * fall * 2.7183;
      float lift = rise * rise;
      ring += lift;
      slope += d * (4.0 * rise * (1.0 - u) * fall * 2.7183 / (r * r));
      float core = fall * fall;
      disc += core;
      mouth += core * core * core;
      odd += (lift + core) * (chance - 0.5);
    }
  }
  float grown = (1.0 - 0.85 * pale) * smoothstep(0.15, 0.9, age) * shown;
  vec2 bumps = slope * 0.06 * grown * mix(0.6, 1.0, live);
  float fade = clamp(0.5 / uPxMm / 2.5, 0.0, 1.0);
  bumps += fine.xy * mix(0.022, 0.095 + 0.06 * (1.0 - live), cover) * fade;
  bumps += broad.zw * 0.03 * cover;
  vec2 ground = vec2(slopeOf(relief.r), slopeOf(relief.g));

  // Colour of what is there.
  vec3 colour = tissue * (0.94 + 0.045 * broad.z + 0.07 * fine.z + 0.22 * odd * grown);
  colour = mix(colour, hue, clamp(disc * 0.42 + ring * 0.12, 0.0, 0.6) * grown);
  colour *= 1.0 - 0.55 * mouth * grown;
  colour = mix(colour, mix(vec3(0.96, 0.94, 0.90), tissue, 0.3), pale * 0.8);
  float algae = smoothstep(2.0, 14.0, age) * clamp(0.45 + 0.4 * broad.w + 0.2 * fine.w, 0.0, 0.8);
  vec3 bone = mix(BONE, ALGAE, algae) * (1.0 - 0.35 * mouth * shown) * (1.0 + 0.05 * fine.z);
  colour = mix(bone, colour, live);
  vec3 stone = STONE * (1.0 + 0.035 * fine.z + 0.02 * broad.z + 0.05 * fine.x * fade);
  colour = mix(stone, colour, cover);

  // Light.
  vec3 normal = normalize(vec3(-ground - bumps, 1.0));
  vec3 light = normalize(uLight);
  float lit = max(dot(normal, light), 0.0) / light.z;
  float open = clamp(0.72 + 0.28 * relief.a * 2.0, 0.0, 1.1);
  float bright = (0.45 + 0.55 * lit * relief.b) * open;
  // Light that went through living tissue keeps its colour: shade on it is deep, not grey.
  colour *= mix(vec3(bright), bright * (0.82 + 0.25 * bright + 0.12 * colour), cover * live);
  vec3 halfway = normalize(light + vec3(0.0, 0.0, 1.0));
  float shine = max(dot(normal, halfway), 0.0);
  shine *= shine;
  shine *= shine;
  shine *= shine;
  shine *= shine;
  shine *= shine;
  colour += vec3(0.10, 0.11, 0.12) * shine * relief.b * cover * mix(0.35, 1.0, live);

  // The tile's own edge catches a little light.
  float edge = smoothstep(-0.8, 0.0, beyond) * (1.0 - cover);
  colour *= 1.0 - 0.25 * edge;
  float alpha = 1.0 - smoothstep(-0.5 * uPxMm, 0.5 * uPxMm, beyond);
  vec3 glare = max(colour - 0.68, 0.0); // a shoulder: light varieties keep their texture
  colour = min(colour, 0.68) + 0.32 * glare / (glare + 0.32);
  oColour = vec4(colour * alpha, alpha + (1.0 - alpha) * shade);
}`;
