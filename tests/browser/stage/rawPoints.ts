/**
 * The yardstick: the same stars as bare points of WebGL, no library, no sky, no rim. Each is one round dot added to the
 * ground, either all of 5.5 px, or as wide as the light of the star reaches in the field.
 */
import type { StarBlock } from "#core/seams/index.ts";

const VERTEX = `#version 300 es
in vec3 dir; in float mag; uniform mat3 view; uniform vec2 plane; uniform vec2 size;
void main() {
  vec3 v = dir * view;
  gl_Position = v.z > 0. ? vec4(v.xy / v.z / plane.x * plane.y, 0., 1.) : vec4(3., 3., 0., 1.);
  float over = size.x - mag - 2.6;
  gl_PointSize = size.y > .5 && over > 0. ? min(64., 14. + 15. * over) : size.y > .5 ? 4.6 : 5.5;
}`;
const FRAGMENT = `#version 300 es
precision highp float; out vec4 colour;
void main() { float t = distance(gl_PointCoord, vec2(.5)) * 2.; colour = vec4(vec3(max(0., 1. - t)), 1.); }`;

export interface RawPoints {
  readonly gl: WebGL2RenderingContext;
  upload(blocks: readonly StarBlock[], faintestMag: number): void;
  draw(viewFromIcrs: Float64Array, planeRadius: number, limitMag: number): void;
  destroy(): void;
}
export const createRawPoints = (sidePx: number, fieldPx: number, asWideAsSeen: boolean): RawPoints => {
  const canvas = document.createElement("canvas");
  canvas.width = sidePx;
  canvas.height = sidePx;
  // In the stage's place, so that the page has the same to show.
  canvas.style.position = "absolute";
  canvas.style.inset = "0 auto auto 0";
  document.body.append(canvas);
  const gl = canvas.getContext("webgl2", { alpha: false, antialias: false })!;
  const program = gl.createProgram();
  for (const [type, text] of [
    [gl.VERTEX_SHADER, VERTEX],
    [gl.FRAGMENT_SHADER, FRAGMENT],
  ] as const) {
    const shader = gl.createShader(type)!;
    gl.shaderSource(shader, text);
    gl.compileShader(shader);
    gl.attachShader(program, shader);
  }
  gl.bindAttribLocation(program, 0, "dir");
  gl.bindAttribLocation(program, 1, "mag");
  gl.linkProgram(program);
  gl.useProgram(program);
  const buffer = gl.createBuffer();
  gl.bindBuffer(gl.ARRAY_BUFFER, buffer);
  gl.enableVertexAttribArray(0);
  gl.vertexAttribPointer(0, 3, gl.FLOAT, false, 16, 0);
  gl.enableVertexAttribArray(1);
  gl.vertexAttribPointer(1, 1, gl.FLOAT, false, 16, 12);
  gl.enable(gl.BLEND);
  gl.blendFunc(gl.ONE, gl.ONE);
  gl.clearColor(0.1, 0.13, 0.17, 1);
  const at = (name: string) => gl.getUniformLocation(program, name);
  const [viewAt, planeAt, sizeAt] = [at("view"), at("plane"), at("size")];
  const matrix = new Float32Array(9);
  let count = 0;
  return {
    gl,
    upload(blocks, faintestMag) {
      const stars: number[] = [];
      for (const { count: all, dirs, milliMag } of blocks) {
        for (let i = 0; i < all && milliMag[i]! <= faintestMag * 1000; i++) {
          stars.push(dirs[i * 3]!, dirs[i * 3 + 1]!, dirs[i * 3 + 2]!, milliMag[i]! / 1000);
        }
      }
      const data = Float32Array.from(stars);
      gl.bufferData(gl.ARRAY_BUFFER, data, gl.DYNAMIC_DRAW);
      count = data.length / 4;
    },
    draw(viewFromIcrs, planeRadius, limitMag) {
      matrix.set(viewFromIcrs);
      gl.viewport(0, 0, sidePx, sidePx);
      gl.uniformMatrix3fv(viewAt, false, matrix);
      gl.uniform2f(planeAt, planeRadius, (2 * fieldPx) / sidePx);
      gl.uniform2f(sizeAt, limitMag, asWideAsSeen ? 1 : 0);
      gl.clear(gl.COLOR_BUFFER_BIT);
      gl.drawArrays(gl.POINTS, 0, count);
    },
    destroy() {
      canvas.remove();
      gl.getExtension("WEBGL_lose_context")?.loseContext();
    },
  };
};
